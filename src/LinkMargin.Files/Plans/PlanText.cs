using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans;

/// <summary>How the messages about a plan write lengths and places.</summary>
internal static class PlanText
{
    /// <summary>A length in metres, to the millimetre.</summary>
    internal static string Metres(double metres) => FormattableString.Invariant($"{Number(metres)} m");

    /// <summary>A length in whole millimetres.</summary>
    internal static string Millimetres(double metres) => FormattableString.Invariant($"{metres * 1000:0} mm");

    /// <summary>An area.</summary>
    internal static string SquareMetres(double area) => FormattableString.Invariant($"{area:0.##} m²");

    /// <summary>A place on the plan.</summary>
    internal static string Place(Point2 p) => FormattableString.Invariant($"({Number(p.X)}, {Number(p.Y)})");

    /// <summary>An allowed range.</summary>
    internal static string Range(Span s) => FormattableString.Invariant($"{Number(s.From)} to {Number(s.To)} m");

    /// <summary>A side of a room.</summary>
    internal static string Side(PlanSide side) => side switch
    {
        PlanSide.North => "north",
        PlanSide.East => "east",
        PlanSide.South => "south",
        _ => "west",
    };

    /// <summary>Names in quotes, the last joined by "and"; of very many only the first ones.</summary>
    internal static string List(IReadOnlyCollection<string> names)
    {
        const int MostNames = 12;
        string[] told = [.. names.Take(MostNames).Select(Quote.Of)];
        if (names.Count > MostNames)
        {
            told = [.. told, FormattableString.Invariant($"{names.Count - MostNames} more")];
        }

        return told.Length < 2 ? string.Concat(told) : $"{string.Join(", ", told[..^1])} and {told[^1]}";
    }

    // Adding zero turns a rounded minus zero into zero.
    private static string Number(double value) => FormattableString.Invariant($"{Math.Round(value, 3) + 0.0:0.###}");
}
