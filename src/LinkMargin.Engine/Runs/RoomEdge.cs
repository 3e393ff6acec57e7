using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>One edge of a room's outline, with the places on it where a route may turn, begin, end or leave.</summary>
internal sealed class RoomEdge
{
    private readonly SortedSet<double> stops = [];

    internal RoomEdge(int level, int room, Point2 start, Point2 end)
    {
        (Level, Room, Start, End) = (level, room, start, end);
        LengthMetres = start.DistanceTo(end);
        Along = (1 / LengthMetres) * (end - start);
        AddAt(0);
        AddAt(LengthMetres);
    }

    internal int Level { get; }

    internal int Room { get; }

    internal Point2 Start { get; }

    internal Point2 End { get; }

    internal double LengthMetres { get; }

    /// <summary>Its direction, of unit length.</summary>
    internal Point2 Along { get; }

    /// <summary>Where its openings are, metres from its start, with the heights of sill and head above the floor.</summary>
    internal List<(double From, double To, double Sill, double Head)> Openings { get; } = [];

    /// <summary>The wall on it; null where two rooms meet without a wall.</summary>
    internal Wall? Wall { get; set; }

    /// <summary>The places, metres from its start, in order.</summary>
    internal IReadOnlyCollection<double> Stops => stops;

    internal Point2 At(double metres) => Start + (metres * Along);

    /// <summary>Its smallest and largest coordinates.</summary>
    internal (Point2 Least, Point2 Greatest) Box => PlanGrid.BoxOf(Start, End);

    /// <summary>The place on its line nearest to a point, metres from its start; outside 0 to its length where the point is past an end.</summary>
    internal double Abreast(Point2 at) => Point2.Dot(at - Start, Along);

    /// <summary>How far to the left of it a point lies, metres.</summary>
    internal double LeftOf(Point2 at) => Point2.Cross(Along, at - Start);

    /// <summary>Adds a place unless there is one already or it is past an end; returns the place on the edge.</summary>
    internal double? AddAt(double metres)
    {
        if (metres < -StopSlackMetres || metres > LengthMetres + StopSlackMetres)
        {
            return null;
        }

        // Only what rounding sets apart is one place: else which of two places is kept would hang on their order.
        foreach (double near in stops.GetViewBetween(metres - GeometryTolerances.SlackMetres, metres + GeometryTolerances.SlackMetres))
        {
            return near;
        }

        double inside = Math.Clamp(metres, 0, LengthMetres);
        stops.Add(inside);
        return inside;
    }

    /// <summary>Whether a cable at a height above the floor can go from one place to another.</summary>
    internal bool IsFree(double from, double to, double heightMetres) => !Openings.Any(opening =>
        opening.From < Math.Max(from, to) - StopSlackMetres && opening.To > Math.Min(from, to) + StopSlackMetres
        && heightMetres >= opening.Sill && heightMetres <= opening.Head);

    /// <summary>Whether there is wall at a place from the floor to the ceiling.</summary>
    internal bool IsSolid(double at) => !Openings.Any(opening => at > opening.From + StopSlackMetres && at < opening.To - StopSlackMetres);

    // What is closer together is abreast of each other.
    internal const double StopSlackMetres = 0.01;
}
