using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Runs;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Runs;
using SkiaSharp;

namespace LinkMargin.Plots.Paths;

/// <summary>The cable runs of a spot on a section, projected onto the cut, each with its number.</summary>
internal sealed class RunSectionLayer(PlanView view, SectionCut cut, IReadOnlyList<DrawnRun> runs, SKColor colour) : PlanLayer(view)
{
    /// <summary>Ground under numbers, pixels.</summary>
    public static IEnumerable<LabelBox> NumberBoxes(PlanView view, SectionCut cut, IReadOnlyList<DrawnRun> runs) =>
        NumbersOf(cut, runs).Select(one => RunSigns.NumberBox(view.Pixel(one.At), view.PixelsPerPoint));

    /// <summary>Ground under lines and numbers, pixels.</summary>
    public static IEnumerable<LabelBox> Ground(PlanView view, SectionCut cut, IReadOnlyList<DrawnRun> runs) =>
    [
        .. runs.SelectMany(run => Stretches(cut, run.Route)).SelectMany(one => RunSigns.Ground(view.Pixel(one.From), view.Pixel(one.To), view.PixelsPerPoint)),
        .. NumberBoxes(view, cut, runs),
    ];

    protected override void Draw(SKCanvas canvas)
    {
        (RouteLeg Leg, Point2 From, Point2 To)[] stretches = [.. runs.SelectMany(run => Stretches(cut, run.Route))];
        using SKPaint casing = RunSigns.Casing(View.PixelsPerPoint);
        foreach ((_, Point2 from, Point2 to) in stretches)
        {
            canvas.DrawLine(View.Pixel(from), View.Pixel(to), casing);
        }

        foreach ((RouteLeg leg, Point2 from, Point2 to) in stretches)
        {
            using SKPaint pen = RunSigns.Line(leg.Kind == LegKind.InFloor, colour, View.PixelsPerPoint);
            canvas.DrawLine(View.Pixel(from), View.Pixel(to), pen);
        }

        foreach (RouteLeg leg in runs.SelectMany(run => run.Route.Legs).Where(leg => leg.Holes > 0 && leg.Kind != LegKind.InFloor))
        {
            RunSigns.DrawHole(canvas, View.Pixel(0.5 * (cut.Seen(leg.From) + cut.Seen(leg.To))), View.PixelsPerPoint);
        }
    }

    private static IEnumerable<(RouteLeg Leg, Point2 From, Point2 To)> Stretches(SectionCut cut, Route route) =>
        from leg in route.Legs
        let points = leg.Corner is { } corner ? new[] { leg.From, corner, leg.To } : [leg.From, leg.To]
        from pair in points.Zip(points.Skip(1))
        select (leg, cut.Seen(pair.First), cut.Seen(pair.Second));

    /// <summary>Draws the numbers, on top of anything that crosses the lines.</summary>
    internal sealed class Numbers(PlanView view, SectionCut cut, IReadOnlyList<DrawnRun> runs, SKColor colour) : PlanLayer(view)
    {
        protected override void Draw(SKCanvas canvas)
        {
            foreach ((int number, Point2 at) in NumbersOf(cut, runs))
            {
                RunSigns.DrawNumber(canvas, number, View.Pixel(at), colour, View.PixelsPerPoint);
            }
        }
    }

    // On the longest visible piece of each run.
    private static IEnumerable<(int Number, Point2 At)> NumbersOf(SectionCut cut, IReadOnlyList<DrawnRun> runs) => RunSigns.NumberPlaces(
        from run in runs
        where run.Route.Legs.Count > 0
        let longest = Stretches(cut, run.Route).MaxBy(one => one.From.DistanceTo(one.To))
        select (run.Number, longest.From, longest.To));
}
