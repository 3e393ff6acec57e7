using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Paths;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>A cable run to draw on a plan.</summary>
/// <param name="Number">Its number in the list of runs, from 1.</param>
/// <param name="Route">Where it lies.</param>
public sealed record DrawnRun(int Number, Route Route);

/// <summary>
/// The cable runs on one level: along walls in full, in the floor above dashed, a ring where a hole is bored, a square where a passage or a
/// riser leaves the level; each with its number.
/// </summary>
internal sealed class RunLayer(PlanView view, House house, IReadOnlyList<DrawnRun> runs, int levelIndex) : PlanLayer(view)
{
    private const double WidthPoints = 2;
    private const double CasingPoints = 1.2;
    private const double HolePoints = 3.2;
    private const double BoxPoints = 14;
    private const double NumberPoints = 8.5;

    // From a wall's face to the line of a cable along it, metres.
    private const double BesideWallMetres = 0.07;

    // A wall whose line is so near to a leg is the one it follows, metres.
    private const double OnWallMetres = 0.3;

    // Shorter stretches show no line, metres.
    private const double SlackMetres = 1e-6;

    /// <summary>Ground that the lines and numbers take on a level, pixels.</summary>
    public static IEnumerable<LabelBox> Ground(PlanView view, House house, IReadOnlyList<DrawnRun> runs, int levelIndex)
    {
        foreach (DrawnRun run in runs)
        {
            foreach ((_, Point2 from, Point2 to) in StretchesOn(house, run.Route, levelIndex))
            {
                double steps = Math.Ceiling(from.DistanceTo(to) * view.PixelsPerMetre / view.Points(BoxPoints / 2));
                for (int i = 0; i <= steps; i++)
                {
                    SKPoint at = view.Pixel(from + (i / Math.Max(1, steps) * (to - from)));
                    yield return LabelBox.Around(at.X, at.Y, view.Points(WidthPoints), view.Points(WidthPoints));
                }
            }

            if (NumberAt(house, run, levelIndex) is { } place)
            {
                SKPoint at = view.Pixel(place);
                yield return NumberBadge.BoxAt(at.X, at.Y, view.PixelsPerPoint);
            }
        }
    }

    /// <summary>What its signs mean.</summary>
    public static IEnumerable<KeyEntry> Entries(double pixelsPerPoint)
    {
        yield return new(BoxPoints, "cable run, R1 as in the list of runs", (canvas, box) => Line(canvas, box, pixelsPerPoint, isHidden: false));
        yield return new(BoxPoints, "run in the floor above", (canvas, box) => Line(canvas, box, pixelsPerPoint, isHidden: true));
        yield return new(BoxPoints, "hole to bore", (canvas, box) => DrawHole(canvas, new((float)box.CentreX, (float)box.CentreY), pixelsPerPoint));
        yield return new(BoxPoints, "up or down: riser or passage", (canvas, box) => DrawRiser(canvas, new((float)box.CentreX, (float)box.CentreY), pixelsPerPoint));
    }

    protected override void Draw(SKCanvas canvas)
    {
        foreach (DrawnRun run in runs)
        {
            using SKPaint casing = Pen.Line(Palette.Paper, View.Points(WidthPoints + (2 * CasingPoints)));
            foreach ((RouteLeg leg, Point2 from, Point2 to) in StretchesOn(house, run.Route, levelIndex))
            {
                using SKPaint pen = PenOf(leg.Kind == LegKind.InFloor, View.PixelsPerPoint);
                canvas.DrawLine(View.Pixel(from), View.Pixel(to), casing);
                canvas.DrawLine(View.Pixel(from), View.Pixel(to), pen);
            }
        }

        foreach ((RouteLeg leg, Point2 from, Point2 to) in runs.SelectMany(run => StretchesOn(house, run.Route, levelIndex)))
        {
            if (leg.Holes > 0 && leg.Kind != LegKind.InFloor)
            {
                DrawHole(canvas, View.Pixel(0.5 * (from + to)), View.PixelsPerPoint);
            }
            else if (leg.From.Plan.DistanceTo(leg.To.Plan) <= SlackMetres)
            {
                DrawRiser(canvas, View.Pixel(from), View.PixelsPerPoint);
            }
        }

        foreach (DrawnRun run in runs)
        {
            if (NumberAt(house, run, levelIndex) is { } place)
            {
                SKPoint at = View.Pixel(place);
                DrawNumber(canvas, run.Number, at, View.PixelsPerPoint);
            }
        }
    }

    private static SKPaint PenOf(bool isHidden, double pixelsPerPoint) => isHidden
        ? Pen.Dashed(Palette.Spot, WidthPoints * pixelsPerPoint, 5 * pixelsPerPoint, 3 * pixelsPerPoint)
        : Pen.Line(Palette.Spot, WidthPoints * pixelsPerPoint);

    private static void Line(SKCanvas canvas, LabelBox box, double pixelsPerPoint, bool isHidden)
    {
        using SKPaint pen = PenOf(isHidden, pixelsPerPoint);
        canvas.DrawLine((float)box.Left, (float)box.CentreY, (float)box.Right, (float)box.CentreY, pen);
    }

    private static void DrawHole(SKCanvas canvas, SKPoint at, double pixelsPerPoint)
    {
        using SKPaint paper = Pen.Fill(Palette.Paper);
        using SKPaint rim = Pen.Line(Palette.Ink, 1.2 * pixelsPerPoint);
        canvas.DrawCircle(at, (float)(HolePoints * pixelsPerPoint), paper);
        canvas.DrawCircle(at, (float)(HolePoints * pixelsPerPoint), rim);
    }

    private static void DrawNumber(SKCanvas canvas, int number, SKPoint at, double pixelsPerPoint)
    {
        float half = (float)(NumberBadge.RadiusPoints * pixelsPerPoint);
        SKRect box = SKRect.Create(at.X - (1.35f * half), at.Y - half, 2.7f * half, 2 * half);
        using SKPaint paper = Pen.Fill(Palette.Paper);
        using SKPaint rim = Pen.Line(Palette.Spot, 0.9 * pixelsPerPoint);
        using var lettering = new Lettering(NumberPoints * pixelsPerPoint, isBold: true);
        canvas.DrawRoundRect(box, half / 2, half / 2, paper);
        canvas.DrawRoundRect(box, half / 2, half / 2, rim);
        lettering.WriteMiddle(canvas, FormattableString.Invariant($"R{number}"), at.X, at.Y, Palette.Ink, SKTextAlign.Center);
    }

    private static void DrawRiser(SKCanvas canvas, SKPoint at, double pixelsPerPoint)
    {
        float half = (float)(HolePoints * pixelsPerPoint);
        using SKPaint fill = Pen.Fill(Palette.Spot);
        canvas.DrawRect(SKRect.Create(at.X - half, at.Y - half, 2 * half, 2 * half), fill);
    }

    // In the middle of the longest stretch on the level.
    private static Point2? NumberAt(House house, DrawnRun run, int levelIndex) =>
        StretchesOn(house, run.Route, levelIndex).Where(stretch => stretch.From.DistanceTo(stretch.To) > SlackMetres)
            .OrderByDescending(stretch => stretch.From.DistanceTo(stretch.To))
            .Select(stretch => (Point2?)(0.5 * (stretch.From + stretch.To))).FirstOrDefault();

    // A leg in a floor belongs to the plan below it.
    private static IEnumerable<RouteLeg> LegsOn(House house, Route route, int levelIndex)
    {
        Level level = house.Levels[levelIndex];
        double top = levelIndex + 1 < house.Levels.Count ? house.Levels[levelIndex + 1].ElevationMetres : double.PositiveInfinity;
        double bottom = levelIndex > 0 ? level.ElevationMetres : double.NegativeInfinity;
        return route.Legs.Where(leg => (leg.From.Z + leg.To.Z) / 2 is var middle
            && middle >= bottom - SlackMetres && middle < top - SlackMetres);
    }

    // The lines of a run on one level as they are drawn: along a wall on its face in the room, not in its middle as a room's outline is.
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
            if (legs[i].Corner is { } corner)
            {
                stretches.Add((legs[i], from, corner.Plan));
                from = corner.Plan;
            }

            stretches.Add((legs[i], from, to));
        }

        return stretches;
    }

    // Two legs that run on are moved aside once; two that meet at a corner by both.
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
