using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Saving;

/// <summary>Compares two houses as far as a file can tell: to a millimetre and a hundredth of a degree, ignoring the order of walls.</summary>
internal static class HouseDifference
{
    // Slightly more than the rounding of a file's lengths.
    private const double SameMetres = 0.0012;
    private const double SameDegrees = 0.02;

    /// <summary>The first difference, in words; null if there is none.</summary>
    public static string? First(House one, House other)
    {
        if (one.Console != other.Console || one.Controller != other.Controller)
        {
            return "the radios differ";
        }

        for (int i = 0; i < one.Levels.Count; i++)
        {
            if (First(one.Levels[i], other.Levels[i]) is { } difference)
            {
                return difference;
            }
        }

        return Differs(one.Fixtures, other.Fixtures, fixture => fixture.Name, AreSame, "fixture")
            ?? Differs(one.Spots, other.Spots, spot => spot.Name, AreSame, "spot")
            ?? Differs(one.Seats, other.Seats, seat => seat.Name, AreSame, "seat");
    }

    private static string? First(Level one, Level other)
    {
        Wall[] walls = Sorted(one), others = Sorted(other);
        if (walls.Length != others.Length)
        {
            return FormattableString.Invariant($"level {Quote.Of(one.Name)} would have {others.Length} walls instead of {walls.Length}");
        }

        for (int i = 0; i < walls.Length; i++)
        {
            if (!AreSame(walls[i], others[i]))
            {
                return $"the wall {Quote.Of(walls[i].Name)} differs";
            }
        }

        return null;
    }

    private static Wall[] Sorted(Level level) =>
    [
        .. level.Walls.OrderBy(wall => Key(Math.Min(wall.Start.X, wall.End.X))).ThenBy(wall => Key(Math.Min(wall.Start.Y, wall.End.Y)))
            .ThenBy(wall => Key(Math.Max(wall.Start.X, wall.End.X))).ThenBy(wall => Key(Math.Max(wall.Start.Y, wall.End.Y)))
            .ThenBy(wall => Key(wall.BaseMetres)),
    ];

    private static double Key(double metres) => Math.Round(metres, 2);

    private static string? Differs<T>(IReadOnlyList<T> some, IReadOnlyList<T> others, Func<T, string> name, Func<T, T, bool> areSame, string what) =>
        some.Count != others.Count
            ? string.Create(CultureInfo.InvariantCulture, $"there would be {others.Count} {what}s instead of {some.Count}")
            : some.Zip(others).Where(pair => name(pair.First) != name(pair.Second) || !areSame(pair.First, pair.Second))
                .Select(pair => $"the {what} {Quote.Of(name(pair.First))} differs").FirstOrDefault();

    private static bool AreSame(Wall one, Wall other) =>
        ((AreSame(one.Start, other.Start) && AreSame(one.End, other.End)) || (AreSame(one.Start, other.End) && AreSame(one.End, other.Start)))
        && one.Material.Name == other.Material.Name && AreSame(one.BaseMetres, other.BaseMetres) && AreSame(one.TopMetres, other.TopMetres)
        && one.Openings.Count == other.Openings.Count
        && Placed(one).Zip(Placed(other)).All(pair => AreSame(pair.First, pair.Second));

    private static IEnumerable<(Opening Opening, Point2 Middle)> Placed(Wall wall) => wall.Openings
        .Select(opening => (opening, wall.Start + ((opening.OffsetMetres + (opening.WidthMetres / 2)) / wall.LengthMetres * (wall.End - wall.Start))))
        .OrderBy(one => Key(one.Item2.X)).ThenBy(one => Key(one.Item2.Y)).ThenBy(one => one.opening.SillMetres);

    private static bool AreSame((Opening Opening, Point2 Middle) one, (Opening Opening, Point2 Middle) other) =>
        AreSame(one.Middle, other.Middle) && one.Opening.IsOpen == other.Opening.IsOpen && one.Opening.Kind == other.Opening.Kind
        && one.Opening.Leaf?.Name == other.Opening.Leaf?.Name && AreSame(one.Opening.WidthMetres, other.Opening.WidthMetres);

    private static bool AreSame(Fixture one, Fixture other) =>
        one.LevelIndex == other.LevelIndex && AreSame(one.Centre, other.Centre) && one.Material.Name == other.Material.Name && one.IsShell == other.IsShell
        && new[] { BoxSides.West, BoxSides.East, BoxSides.South, BoxSides.North, BoxSides.Top, BoxSides.Bottom }
            .All(side => !one.IsShell || one.PanelOn(side)?.Name == other.PanelOn(side)?.Name);

    private static bool AreSame(Spot one, Spot other) =>
        one.LevelIndex == other.LevelIndex && AreSame(one.Plan, other.Plan) && AreSame(one.HeightMetres, other.HeightMetres) && one.Lead == other.Lead;

    private static bool AreSame(Seat one, Seat other) =>
        one.LevelIndex == other.LevelIndex && AreSame(one.Plan, other.Plan) && AreSame(one.HandsMetres, other.HandsMetres)
        && one.Faces == other.Faces && one.RequiredDb == other.RequiredDb && one.Plays == other.Plays
        && (one.FacingDegrees is { } a && other.FacingDegrees is { } b ? Math.Abs(Math.IEEERemainder(a - b, 360)) < SameDegrees : one.FacingDegrees == other.FacingDegrees);

    private static bool AreSame(Point2 one, Point2 other) => AreSame(one.X, other.X) && AreSame(one.Y, other.Y);

    private static bool AreSame(double one, double other) => Math.Abs(one - other) < SameMetres;
}
