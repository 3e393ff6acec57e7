using System.Diagnostics;
using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Benchmarks;

/// <summary>
/// The same measurements in a few minutes: each is repeated until it has taken a second, three times over, and the fastest
/// counts. Good for ratios on one machine; the full run is the one to quote.
/// </summary>
internal static class ShortReport
{
    private const int Links = 1000;

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
        var goals = new List<Goal>();
        foreach (ModelDepth depth in Enum.GetValues<ModelDepth>())
        {
            double first = 0, last = 0;
            foreach (int walls in WallCounts)
            {
                (double layOutMs, last) = TimeLink(depth, walls, out int many);
                first = first == 0 ? last : first;
                Line(output, $"{depth,-6}  {many,6}  {layOutMs,11:F1}  {last,8:F2}  {last / first,14:F1}");
            }

            goals.Add(new Goal($"5000 walls against 50, same links, {depth.ToString().ToLowerInvariant()} model", last / first, 6, 3, IsMost: true));
        }

        output.WriteLine();
        output.WriteLine("Walls crossed by a link, warm, one thread, same links and crossings; general purpose over engine");
        output.WriteLine("walls   links        crossings/link   general ns   engine ns   ratio");
        foreach (int walls in WallCounts)
        {
            PrintCrossings(output, walls);
            double ratio = PrintCrossingsFromOnePlace(output, walls);
            if (walls == 200)
            {
                goals.Insert(0, new Goal("crossings of a link from one console, 200 walls, one core, against the baseline", ratio, 40, 100));
            }
        }

        output.WriteLine();
        goals.AddRange(DragReport.Print(output));
        output.WriteLine();
        goals.Add(RunsReport.Print(output));
        output.WriteLine();
        Goal.Print(output, goals);
        output.WriteLine();
        Line(output, $"Greatest memory held: {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:F0} MB");
    }

    /// <summary>How many times as long a link takes in a house of more walls.</summary>
    internal static double LinkRatio(ModelDepth depth, int few, int many) => TimeLink(depth, many, out _).EachMicros / TimeLink(depth, few, out _).EachMicros;

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

    // Laying out, milliseconds, and each link, microseconds: the links of the smallest house, from its spot, in a larger one.
    private static (double LayOutMs, double EachMicros) TimeLink(ModelDepth depth, int walls, out int many)
    {
        House house = SyntheticHouse.OneStorey(walls);
        many = house.Levels[0].Walls.Count;
        var watch = Stopwatch.StartNew();
        SpotModel spot = new LinkModel(house, depth).For(house.Spots[0]);
        double layOutMs = watch.Elapsed.TotalMilliseconds;
        House smallest = SyntheticHouse.OneStorey(WallCounts[0]);
        Point3 from = smallest.PositionOf(smallest.Spots[0]), here = house.PositionOf(house.Spots[0]);
        Point3[] places = [.. RandomLinks.From(smallest, from, 200).Select(place => new Point3(place.X - from.X + here.X, place.Y - from.Y + here.Y, place.Z))];
        var buffer = new TraceBuffer();
        double micros = 1e6 / places.Length * Stopwatches.Seconds(() =>
        {
            foreach (Point3 place in places)
            {
                spot.PathLossDb(place, null, buffer);
            }
        });
        return (layOutMs, micros);
    }

    // Any two places: the engine with order, angle and openings.
    private static void PrintCrossings(TextWriter output, int walls)
    {
        House house = SyntheticHouse.OneStorey(walls);
        (Point3 From, Point3 To)[] links = RandomLinks.In(house, Links);
        EngineCrossings.AssertAgree(house, links);
        var engine = new EngineCrossings(house);
        PrintRatio(output, house, "any two", links, () =>
        {
            int found = 0;
            foreach ((Point3 from, Point3 to) in links)
            {
                found += engine.Find(from, to);
            }

            return found;
        });
    }

    // One console, as for a field: the list of walls, as the baseline gives it.
    private static double PrintCrossingsFromOnePlace(TextWriter output, int walls)
    {
        House house = SyntheticHouse.OneStorey(walls);
        Point3 from = house.PositionOf(house.Spots[0]);
        Point3[] places = [.. RandomLinks.From(house, from, Links)];
        (Point3 From, Point3 To)[] links = [.. places.Select(to => (from, to))];
        EngineCrossings.AssertAgreeFrom(house, from, links);
        WallsAround around = Scene.Compile(house).Around(from)[0];
        int[] room = new int[64];
        return PrintRatio(output, house, "one console", links, () =>
        {
            int found = 0;
            foreach (Point3 to in places)
            {
                found += around.Find(to, ref room);
            }

            return found;
        });
    }

    private static double PrintRatio(
        TextWriter output, House house, string kind, (Point3 From, Point3 To)[] links, Func<int> findAll)
    {
        var baseline = new GeneralPurposeCrossings(house.Levels[0]);
        var crossed = new List<int>();
        int found = 0;
        double general = Stopwatches.Seconds(() =>
        {
            foreach ((Point3 from, Point3 to) in links)
            {
                baseline.Find(from, to, crossed);
            }
        });
        double own = Stopwatches.Seconds(() => found = findAll());
        double each = 1e9 / links.Length;
        Line(
            output,
            $"{house.Levels[0].Walls.Count,5}   {kind,-11}  {(double)found / links.Length,14:F1}  {general * each,11:F0}  {own * each,10:F1}  {general / own,6:F1}");
        return general / own;
    }

    private static void Line(TextWriter output, FormattableString text) =>
        output.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
