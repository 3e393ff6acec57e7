using SkiaSharp;

namespace LinkMargin.Plots.Colours;

/// <summary>One colour of the scale of margins, for what draws maps elsewhere.</summary>
/// <param name="FromDb">The margin from which on it stands, dB; the lowest also stands for all below.</param>
/// <param name="Hex">The colour, such as <c>#1b2029</c>.</param>
public sealed record MarginColour(double FromDb, string Hex)
{
    /// <summary>The usual step from colour to colour, dB.</summary>
    public const double StepDb = 5;

    /// <summary>The colours that a map of a range has, lowest first.</summary>
    public static IReadOnlyList<MarginColour> Over(ColourRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        var colours = new MarginColours(range, StepDb);
        return [.. colours.Lines().Prepend(range.LeastDb).Select(fromDb => new MarginColour(fromDb, Hex(colours.Of(fromDb))))];

        static string Hex(SKColor colour) => FormattableString.Invariant($"#{colour.Red:x2}{colour.Green:x2}{colour.Blue:x2}");
    }
}
