using System.Diagnostics;
using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Benchmarks;

/// <summary>
/// The same measurements in a few minutes: each is repeated until it has taken a second, three times over, and the fastest
/// counts. Good for ratios on one machine; the full run is the one to quote.
/// </summary>
internal static class ShortReport
{
    private static readonly int[] WallCounts = [50, 200, 1000, 5000];

    internal static void Print(TextWriter output)
    {
        output.WriteLine("Whole house, three storeys, cells of 0.1 m, one thread");
        output.WriteLine("depth    walls   cells   seconds   cells/s per core   allocated MB");
        foreach (ModelDepth depth in Enum.GetValues<ModelDepth>())
        {
            PrintField(output, depth);
        }

        output.WriteLine();
        output.WriteLine("One link as walls grow, one thread");
        output.WriteLine("depth    walls   lay out ms   µs/link   over 50 walls");
        foreach (ModelDepth depth in Enum.GetValues<ModelDepth>())
        {
            double first = 0;
            foreach (int walls in WallCounts)
            {
                PrintLink(output, depth, walls, ref first);
            }
        }

        output.WriteLine();
        output.WriteLine("Walls crossed by a link, warm, one thread, same crossings; general purpose over engine");
        output.WriteLine("walls   crossings/link   general µs   engine µs   ratio");
        foreach (int walls in WallCounts)
        {
            PrintCrossings(output, walls);
        }

        output.WriteLine();
        DragReport.Print(output);

        output.WriteLine();
        Line(output, $"Greatest memory held: {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:F0} MB");
    }

    private static void PrintField(TextWriter output, ModelDepth depth)
    {
        var model = new LinkModel(SyntheticHouse.ThreeStoreys(), depth);
        int cells = FieldBenchmark.Compute(model, threads: 1);
        long before = GC.GetTotalAllocatedBytes(precise: true);
        FieldBenchmark.Compute(model, threads: 1);
        double allocated = (GC.GetTotalAllocatedBytes(precise: true) - before) / 1e6;
        double seconds = Stopwatches.Seconds(() => FieldBenchmark.Compute(model, threads: 1));
        int walls = model.House.Levels.Sum(level => level.Walls.Count);
        Line(output, $"{depth,-6}  {walls,6}  {cells,6}  {seconds,8:F3}  {cells / seconds,17:N0}  {allocated,13:F2}");
    }

    private static void PrintLink(TextWriter output, ModelDepth depth, int walls, ref double first)
    {
        House house = SyntheticHouse.OneStorey(walls);
        var watch = Stopwatch.StartNew();
        SpotModel spot = new LinkModel(house, depth).For(house.Spots[0]);
        double layOutMs = watch.Elapsed.TotalMilliseconds;
        Point3[] places = [.. RandomLinks.From(house, house.PositionOf(house.Spots[0]), 200)];
        var buffer = new TraceBuffer();
        double micros = 1e6 / places.Length * Stopwatches.Seconds(() =>
        {
            foreach (Point3 place in places)
            {
                spot.PathLossDb(place, null, buffer);
            }
        });
        first = first == 0 ? micros : first;
        Line(output, $"{depth,-6}  {house.Levels[0].Walls.Count,6}  {layOutMs,11:F1}  {micros,8:F2}  {micros / first,14:F1}");
    }

    private static void PrintCrossings(TextWriter output, int walls)
    {
        House house = SyntheticHouse.OneStorey(walls);
        (Point3 From, Point3 To)[] links = RandomLinks.In(house, 1000);
        EngineCrossings.AssertAgree(house, links);
        var baseline = new GeneralPurposeCrossings(house.Levels[0]);
        var engine = new EngineCrossings(house);
        var crossed = new List<int>();
        int found = 0;
        double general = Stopwatches.Seconds(() => found = links.Sum(link => baseline.Find(link.From, link.To, crossed)));
        double own = Stopwatches.Seconds(() => found = links.Sum(link => engine.Find(link.From, link.To)));
        double each = 1e6 / links.Length;
        Line(
            output,
            $"{house.Levels[0].Walls.Count,5}  {(double)found / links.Length,15:F1}  {general * each,11:F2}  {own * each,10:F2}  {general / own,6:F1}");
    }

    private static void Line(TextWriter output, FormattableString text) =>
        output.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
