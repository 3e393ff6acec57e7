using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Benchmarks;

/// <summary>What dragging a console over the plan of the demo house would ask for, as ratios within one run.</summary>
internal static class DragReport
{
    private const int Reevaluations = 1000;

    internal static IReadOnlyList<Goal> Print(TextWriter output)
    {
        var goals = new List<Goal>();
        House house = DemoFields.House();
        var model = new LinkModel(house);
        double fine = FieldSeconds(model, 0.1, null), one = FieldSeconds(model, 0.1, 1), coarse = FieldSeconds(model, 0.25, null);
        double baseline = BaselineSeconds(house, 0.1, out int cells);
        output.WriteLine("Demo house, one console, full model, all levels");
        Line(output, $"field of {cells} cells of 0.1 m, all cores: {fine:F3} s; the same links' crossed walls alone by the");
        Line(output, $"  general-purpose library on one core: {baseline:F3} s");
        Line(output, $"field of 0.25 m: {coarse:F3} s, {1 / coarse:F1} fields a second");
        goals.Add(new Goal("full field of 0.1 m, all cores, against the baseline's crossings on one core", baseline / fine, 1, 5));
        // The aim is the whole house sixty times a second.
        goals.Add(new Goal("full field of 0.25 m against that of 0.1 m", fine / coarse, 6, fine * 60));

        Point3[] places = [.. DemoFields.Places(house, 0.25)];
        double tracing = Stopwatches.Seconds(() => Trace(model, house.Spots[0], places), 1, 2);
        var stored = StoredPaths.Of(model, house.Spots[0], places);
        double[] shifts = [.. stored.Parameters.Select((_, i) => Math.Sin(i))];
        double evaluating = Stopwatches.Seconds(() => Evaluate(stored, shifts), 1, 2);
        Line(output, $"{Reevaluations} evaluations of its stored paths: {Reevaluations * evaluating:F2} s; tracing it again: {tracing:F2} s each time");
        goals.Add(new Goal("evaluating a field's stored paths against tracing again", tracing / evaluating, 20, 100));
        goals.Add(new Goal("two threads against one", one / fine, 1.8, 1.95));

        double memory = MemoryReport.MegabytesOfAnotherProcess();
        Line(output, $"field of 0.05 m in a process of its own: {memory:F0} MB held at most");
        goals.Add(new Goal("memory of the full field of 0.05 m, MB", memory, 300, 100, IsMost: true));

        double peak = VectorPeak.OperationsPerSecond();
        double operations = LinkArithmetic.Operations((FullSpotModel)model.For(house.Spots[0]), places);
        double reached = operations * places.Length / tracing;
        Line(output, $"a core's vector units do {peak / 1e9:F0} thousand million operations a second at most; a full link takes about");
        Line(output, $"  {operations / 1000:F0} thousand of them in {1e6 * tracing / places.Length:F0} µs: {100 * reached / peak:F1} % of that");
        return goals;
    }

    private static double FieldSeconds(LinkModel model, double cellMetres, int? threads) =>
        Stopwatches.Seconds(() => DemoFields.Compute(model, cellMetres, threads), 1, 2);

    private static void Trace(LinkModel model, Spot spot, Point3[] places)
    {
        SpotModel from = model.For(spot);
        var buffer = new TraceBuffer();
        foreach (Point3 place in places)
        {
            from.PathLossDb(place, null, buffer);
        }
    }

    private static void Evaluate(StoredPaths stored, double[] shiftsDb)
    {
        foreach (StoredLink link in stored.Links)
        {
            link.PathLossDb(shiftsDb);
        }
    }

    // Which walls of each level between the two ends the link crosses on the plan.
    private static double BaselineSeconds(House house, double cellMetres, out int cells)
    {
        GeneralPurposeCrossings[] levels = [.. house.Levels.Select(level => new GeneralPurposeCrossings(level))];
        Spot spot = house.Spots[0];
        Point3 console = house.PositionOf(spot);
        (Point3 Place, int Level)[] places = [.. house.Levels.SelectMany((_, level) =>
            DemoFields.Places(house, cellMetres, level).Select(place => (place, level)))];
        cells = places.Length;
        var crossed = new List<int>();
        return Stopwatches.Seconds(
            () =>
            {
                foreach ((Point3 place, int level) in places)
                {
                    for (int i = Math.Min(level, spot.LevelIndex); i <= Math.Max(level, spot.LevelIndex); i++)
                    {
                        levels[i].Find(console, place, crossed);
                    }
                }
            },
            1,
            2);
    }

    private static void Line(TextWriter output, FormattableString text) =>
        output.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
