using SkiaSharp;

namespace LinkMargin.Plots.Colours;

/// <summary>One colour of the scale of margins, for maps drawn elsewhere.</summary>
/// <param name="FromDb">The lowest margin with this colour, dB; the lowest colour also covers everything below.</param>
/// <param name="Hex">The colour, such as <c>#1b2029</c>.</param>
public sealed record MarginColour(double FromDb, string Hex)
{
    /// <summary>The usual step between colours, dB.</summary>
    public const double StepDb = 5;

    /// <summary>The colours of a map with this range, lowest first.</summary>
    public static IReadOnlyList<MarginColour> Over(ColourRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        var colours = new MarginColours(range, StepDb);
        return [.. colours.Lines().Prepend(range.LeastDb).Select(fromDb => new MarginColour(fromDb, Hex(colours.Of(fromDb))))];

        static string Hex(SKColor colour) => FormattableString.Invariant($"#{colour.Red:x2}{colour.Green:x2}{colour.Blue:x2}");
    }
}
