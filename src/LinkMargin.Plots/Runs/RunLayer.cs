using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Runs;

/// <summary>
/// The cable runs on one level: solid along walls, dashed in the floor above, a ring at a hole to drill, a square where a passage or
/// a riser leaves the level; each with its number.
/// </summary>
internal sealed class RunLayer(PlanView view, House house, IReadOnlyList<DrawnRun> runs, int levelIndex) : PlanLayer(view)
{
    // Distance from a wall's face to the line of a cable along it, metres.
    private const double BesideWallMetres = 0.07;

    // A leg this close to a wall's line follows that wall, metres.
    private const double OnWallMetres = 0.3;

    // Shorter pieces are not drawn, metres.
    private const double SlackMetres = 1e-6;

    /// <summary>Ground under the lines and numbers on a level, pixels.</summary>
    public static IEnumerable<LabelBox> Ground(PlanView view, House house, IReadOnlyList<DrawnRun> runs, int levelIndex)
    {
        foreach (DrawnRun run in runs)
        {
            foreach ((_, Point2 from, Point2 to) in StretchesOn(house, run.Route, levelIndex))
            {
                foreach (LabelBox box in RunSigns.Ground(view.Pixel(from), view.Pixel(to), view.PixelsPerPoint))
                {
                    yield return box;
                }
            }
        }

        foreach ((_, Point2 place) in NumbersOn(house, runs, levelIndex))
        {
            yield return RunSigns.NumberBox(view.Pixel(place), view.PixelsPerPoint);
        }
    }

    /// <summary>The key of its symbols.</summary>
    public static IEnumerable<KeyEntry> Entries(double pixelsPerPoint) => RunSigns.Entries(Palette.Spot, pixelsPerPoint).Append(RunSigns.RiserEntry(pixelsPerPoint));

    protected override void Draw(SKCanvas canvas)
    {
        foreach (DrawnRun run in runs)
        {
            using SKPaint casing = RunSigns.Casing(View.PixelsPerPoint);
            foreach ((RouteLeg leg, Point2 from, Point2 to) in StretchesOn(house, run.Route, levelIndex))
            {
                using SKPaint pen = RunSigns.Line(leg.Kind == LegKind.InFloor, Palette.Spot, View.PixelsPerPoint);
                canvas.DrawLine(View.Pixel(from), View.Pixel(to), casing);
                canvas.DrawLine(View.Pixel(from), View.Pixel(to), pen);
            }
        }

        foreach ((RouteLeg leg, Point2 from, Point2 to) in runs.SelectMany(run => StretchesOn(house, run.Route, levelIndex)))
        {
            if (leg.Holes > 0 && leg.Kind != LegKind.InFloor)
            {
                RunSigns.DrawHole(canvas, View.Pixel(0.5 * (from + to)), View.PixelsPerPoint);
            }
            else if (leg.From.Plan.DistanceTo(leg.To.Plan) <= SlackMetres)
            {
                RunSigns.DrawRiser(canvas, View.Pixel(from), View.PixelsPerPoint);
            }
        }

        foreach ((int number, Point2 place) in NumbersOn(house, runs, levelIndex))
        {
            RunSigns.DrawNumber(canvas, number, View.Pixel(place), Palette.Spot, View.PixelsPerPoint);
        }
    }

    // On the longest piece of each run on the level.
    private static IEnumerable<(int Number, Point2 At)> NumbersOn(House house, IReadOnlyList<DrawnRun> runs, int levelIndex) => RunSigns.NumberPlaces(
        from run in runs
        let stretches = StretchesOn(house, run.Route, levelIndex)
        where stretches.Count > 0
        let longest = stretches.MaxBy(stretch => stretch.From.DistanceTo(stretch.To))
        where longest.From.DistanceTo(longest.To) > SlackMetres
        select (run.Number, longest.From, longest.To));

    // A leg in a floor is drawn on the plan below it.
    private static IEnumerable<RouteLeg> LegsOn(House house, Route route, int levelIndex)
    {
        Level level = house.Levels[levelIndex];
        double top = levelIndex + 1 < house.Levels.Count ? house.Levels[levelIndex + 1].ElevationMetres : double.PositiveInfinity;
        double bottom = levelIndex > 0 ? level.ElevationMetres : double.NegativeInfinity;
        return route.Legs.Where(leg => (leg.From.Z + leg.To.Z) / 2 is var middle
            && middle >= bottom - SlackMetres && middle < top - SlackMetres);
    }

    // The lines of a run on one level as drawn: along a wall on its face in the room, not in its middle like a room's outline.
    private static List<(RouteLeg Leg, Point2 From, Point2 To)> StretchesOn(House house, Route route, int levelIndex)
    {
        Level level = house.Levels[levelIndex];
        RouteLeg[] legs = [.. LegsOn(house, route, levelIndex)];
        Point2[] aside = [.. legs.Select(leg => AsideOf(level, leg))];
        List<(RouteLeg, Point2, Point2)> stretches = [];
        for (int i = 0; i < legs.Length; i++)
        {
            Point2 before = i > 0 ? Sum(aside[i - 1], aside[i]) : aside[i], after = i + 1 < legs.Length ? Sum(aside[i], aside[i + 1]) : aside[i];
            Point2 from = legs[i].From.Plan + before, to = legs[i].To.Plan + after;
            if (legs[i].Kind == LegKind.InFloor && legs[i].Corner is { } corner)
            {
                stretches.Add((legs[i], from, corner.Plan));
                from = corner.Plan;
            }

            stretches.Add((legs[i], from, to));
        }

        return stretches;
    }

    // Two legs in line are offset once; two that meet at a corner are offset by both.
    private static Point2 Sum(Point2 one, Point2 other) =>
        Math.Abs(Point2.Cross(one, other)) <= SlackMetres && Point2.Dot(one, one) > 0 && Point2.Dot(other, other) > 0 ? one : one + other;

    private static Point2 AsideOf(Level level, RouteLeg leg)
    {
        Point2 way = leg.To.Plan - leg.From.Plan, middle = 0.5 * (leg.From.Plan + leg.To.Plan);
        double length = leg.From.Plan.DistanceTo(leg.To.Plan);
        if (leg.Kind is not (LegKind.AlongFloor or LegKind.AlongCeiling) || length <= SlackMetres
            || level.Rooms.FirstOrDefault(room => room.Name == leg.Where) is not { } room)
        {
            return default;
        }

        Point2 left = (1 / length) * new Point2(-way.Y, way.X);
        Wall? wall = level.Walls.Where(w => w.LengthMetres > 0).MinBy(w => Apart(w, middle));
        double half = wall is not null && Apart(wall, middle) <= OnWallMetres ? wall.HalfThicknessMetres : 0;
        double side = room.Outline.Contains(middle + (OnWallMetres * left)) ? 1 : -1;
        return side * (half + BesideWallMetres) * left;
    }

    private static double Apart(Wall wall, Point2 at)
    {
        Point2 along = wall.End - wall.Start;
        double share = Math.Clamp(Point2.Dot(at - wall.Start, along) / Point2.Dot(along, along), 0, 1);
        return at.DistanceTo(wall.Start + (share * along));
    }
}
