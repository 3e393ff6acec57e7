using LinkMargin.Engine.Fields;
using SkiaSharp;

namespace LinkMargin.Plots.Colours;

/// <summary>The tones of a map and the lines between them, for drawing a map without this library.</summary>
/// <param name="Range">The margins at the ends of the scale.</param>
/// <param name="StepDb">Step between lines, dB.</param>
/// <param name="Tones">Colours as <c>#rrggbb</c>, lowest margin first.</param>
/// <param name="Lines">Margins of the lines, dB.</param>
public sealed record ToneScale(ColourRange Range, double StepDb, IReadOnlyList<string> Tones, IReadOnlyList<double> Lines)
{
    /// <summary>The tones for several fields, in the steps of a map.</summary>
    public static ToneScale Covering(IEnumerable<Field> fields, double requiredDb, double stepDb)
    {
        var range = ColourRange.Covering(fields, requiredDb);
        var colours = new MarginColours(range, stepDb);
        int tones = (int)Math.Round((range.GreatestDb - range.LeastDb) / stepDb);
        return new ToneScale(
            range,
            stepDb,
            [.. Enumerable.Range(0, tones).Select(i => Hex(colours.Of(range.LeastDb + ((i + 0.5) * stepDb))))],
            [.. colours.Lines()]);
    }

    /// <summary>This many tones from one end of the scale to the other.</summary>
    public static IReadOnlyList<string> Even(int tones) => [.. Enumerable.Range(0, tones).Select(i => Hex(ColourScale.At((i + 0.5) / tones)))];

    private static string Hex(SKColor colour) => FormattableString.Invariant($"#{colour.Red:x2}{colour.Green:x2}{colour.Blue:x2}");
}
