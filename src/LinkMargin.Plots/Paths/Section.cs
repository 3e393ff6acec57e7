using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;

namespace LinkMargin.Plots.Paths;

/// <summary>Everything that a cut through two places meets.</summary>
internal sealed class Section
{
    private const double AboutMetres = 0.8;
    private const double BeyondMetres = 0.35;

    public Section(PathsRequest request)
        : this(SectionRequest.Of(request))
    {
    }

    public Section(SectionRequest request)
    {
        House house = request.House;
        Cut = new(request.From.Plan, request.To.Plan);
        From = Cut.Seen(request.From.In(house));
        To = Cut.Seen(request.To.In(house));
        Point2[] seen = [From, To, .. request.Paths.Where(e => e.Path.Path.Kind != PathKind.Diffuse).SelectMany(e => e.Path.Path.Points)
            .Concat(request.Runs.SelectMany(run => run.Route.Line)).Select(Cut.Seen)];
        double[] bounds = [.. house.Levels.Zip(house.Levels.Skip(1), (below, over) => (below.CeilingMetres + over.ElevationMetres) / 2)];
        int lowest = bounds.Count(bound => bound <= seen.Min(p => p.Y)), highest = bounds.Count(bound => bound <= seen.Max(p => p.Y));
        IsLowest = lowest == 0;
        Levels = [.. house.Levels.Skip(lowest).Take(highest - lowest + 1)];
        Floors =
        [
            .. Enumerable.Range(Math.Max(0, lowest - 1), house.Levels.Count)
                .TakeWhile(i => i <= highest && i < house.Levels.Count)
                .Where(i => house.Levels[i].Above is not null)
                .Select(i => FloorOf(house.Levels[i], i + 1 < house.Levels.Count ? house.Levels[i + 1] : null)),
        ];
        Fixtures =
        [
            .. house.Fixtures.Where(f => f.LevelIndex >= lowest && f.LevelIndex <= highest && f.Seat is null)
                .SelectMany(f => FixtureInCut.Of(Cut, f, house.Levels[f.LevelIndex].ElevationMetres)),
        ];
        double bottom = IsLowest ? Levels[0].ElevationMetres : Floors.Min(floor => floor.BottomMetres);
        double top = Math.Max(Levels[^1].CeilingMetres, Floors.Select(floor => floor.TopMetres).DefaultIfEmpty(0).Max());
        Bounds = new(new(seen.Min(p => p.X) - AboutMetres, bottom - BeyondMetres), new(seen.Max(p => p.X) + AboutMetres, top + BeyondMetres));
    }

    /// <summary>The cut.</summary>
    public SectionCut Cut { get; }

    /// <summary>The place it leads from, on the cut: the spot of a link.</summary>
    public Point2 From { get; }

    /// <summary>The place it leads to, on the cut: the hands of the seat's player on a link.</summary>
    public Point2 To { get; }

    /// <summary>The levels with paths on them, lowest first.</summary>
    public IReadOnlyList<Level> Levels { get; }

    /// <summary>Whether the first of them is the lowest of the house.</summary>
    public bool IsLowest { get; }

    /// <summary>The floors between, below and above these levels.</summary>
    public IReadOnlyList<FloorInCut> Floors { get; }

    /// <summary>The fixtures on these levels.</summary>
    public IReadOnlyList<FixtureInCut> Fixtures { get; }

    /// <summary>The visible part of the cut.</summary>
    public PlanBounds Bounds { get; }

    private FloorInCut FloorOf(Level below, Level? over)
    {
        FloorAbove floor = below.Above!;
        IEnumerable<Polygon> rooms = below.Rooms.Concat(over?.Rooms ?? []).Select(room => room.Outline);
        IReadOnlyList<(double From, double To)> holes = Cut.InsideAny(floor.Voids);
        var stretches = new List<(double From, double To)>();
        foreach ((double from, double to) in Cut.InsideAny(rooms))
        {
            double start = from;
            foreach ((double holeFrom, double holeTo) in holes.Where(hole => hole.To > from && hole.From < to))
            {
                if (holeFrom > start)
                {
                    stretches.Add((start, holeFrom));
                }

                start = Math.Max(start, holeTo);
            }

            if (to > start)
            {
                stretches.Add((start, to));
            }
        }

        return new(floor, below.CeilingMetres, over?.ElevationMetres ?? below.CeilingMetres + floor.BuildUp.ThicknessMetres, stretches, holes);
    }
}

/// <summary>A floor where it crosses the cut.</summary>
/// <param name="Floor">The floor.</param>
/// <param name="BottomMetres">Its underside above the lowest level's floor.</param>
/// <param name="TopMetres">Its top.</param>
/// <param name="Stretches">Its extent along the cut, without voids.</param>
/// <param name="Holes">Its voids along the cut.</param>
internal sealed record FloorInCut(
    FloorAbove Floor,
    double BottomMetres,
    double TopMetres,
    IReadOnlyList<(double From, double To)> Stretches,
    IReadOnlyList<(double From, double To)> Holes);

/// <summary>A fixture where it crosses the cut.</summary>
/// <param name="Fixture">The fixture.</param>
/// <param name="From">Its nearer side along the cut, metres.</param>
/// <param name="To">Its farther side.</param>
/// <param name="BottomMetres">Its underside above the lowest level's floor.</param>
/// <param name="TopMetres">Its top.</param>
/// <param name="HasNear">Whether the nearer side has a panel; open sides of shells have none.</param>
/// <param name="HasFar">The same for the farther side.</param>
internal sealed record FixtureInCut(
    Fixture Fixture, double From, double To, double BottomMetres, double TopMetres, bool HasNear, bool HasFar)
{
    /// <summary>The fixture on the cut; empty if the cut misses it.</summary>
    public static IEnumerable<FixtureInCut> Of(SectionCut cut, Fixture fixture, double floorMetres)
    {
        (double At, bool IsThere)[] sides =
        [
            .. FixtureLayer.SidesOf(fixture).Select(side => (At: cut.Crossing(side.From, side.To), side.IsThere))
                .Where(side => side.At is not null).Select(side => (side.At!.Value, side.IsThere)).OrderBy(side => side.Value),
        ];
        if (sides is [var near, var far])
        {
            yield return new(fixture, near.At, far.At, floorMetres + fixture.FromMetres, floorMetres + fixture.ToMetres, near.IsThere, far.IsThere);
        }
    }
}
