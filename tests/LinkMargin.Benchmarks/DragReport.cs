using System.Globalization;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Benchmarks;

/// <summary>What dragging a console over the plan of the demo house would ask for, as ratios within one run.</summary>
internal static class DragReport
{
    private const int Reevaluations = 1000;

    internal static void Print(TextWriter output)
    {
        House house = HouseFile.Parse(DemoHouse.Text, "the demo house", MaterialTablesFile.ReadBuiltIn().Tables!).House!;
        var model = new LinkModel(house);
        double fine = FieldSeconds(model, 0.1, null), one = FieldSeconds(model, 0.1, 1), coarse = FieldSeconds(model, 0.25, null);
        double baseline = BaselineSeconds(house, 0.1, out int cells);
        output.WriteLine("Demo house, one console, full model, all levels");
        Line(output, $"field of {cells} cells of 0.1 m, all cores: {fine:F3} s; the same links' crossed walls alone by the");
        Line(output, $"  general-purpose library on one core: {baseline:F3} s; the field is {baseline / fine:F2} times as fast");
        Line(output, $"one thread over all {Environment.ProcessorCount}: {one / fine:F2}");
        Line(output, $"field of 0.25 m over that of 0.1 m: {fine / coarse:F1} times as fast, {1 / coarse:F1} fields a second");

        Point3[] places = [.. Places(house, 0.25)];
        double tracing = Stopwatches.Seconds(() => Trace(model, house.Spots[0], places), 1, 2);
        var stored = StoredPaths.Of(model, house.Spots[0], places);
        double[] shifts = [.. stored.Parameters.Select((_, i) => Math.Sin(i))];
        double evaluating = Stopwatches.Seconds(() => Evaluate(stored, shifts), 1, 2);
        Line(
            output,
            $"{Reevaluations} evaluations of its stored paths: {Reevaluations * evaluating:F2} s, {tracing / evaluating:F0} times cheaper than tracing again");

        long before = GC.GetTotalAllocatedBytes(precise: true);
        Fields(model, 0.05, null);
        Line(output, $"field of 0.05 m: {(GC.GetTotalAllocatedBytes(precise: true) - before) / 1e6:F0} MB allocated in all");
    }

    private static double FieldSeconds(LinkModel model, double cellMetres, int? threads) =>
        Stopwatches.Seconds(() => Fields(model, cellMetres, threads), 1, 2);

    private static void Fields(LinkModel model, double cellMetres, int? threads)
    {
        for (int level = 0; level < model.House.Levels.Count; level++)
        {
            FieldComputation.Compute(
                model, new FieldRequest(model.House.Spots[0], level) { CellMetres = cellMetres, Threads = threads });
        }
    }

    private static void Trace(LinkModel model, Spot spot, Point3[] places)
    {
        SpotModel from = model.For(spot);
        var buffer = new Engine.Scenes.TraceBuffer();
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
        (Point3 Place, int Level)[] places =
            [.. house.Levels.SelectMany((_, level) => Places(house, cellMetres, level).Select(place => (place, level)))];
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

    private static IEnumerable<Point3> Places(House house, double cellMetres) =>
        house.Levels.SelectMany((_, level) => Places(house, cellMetres, level));

    private static IEnumerable<Point3> Places(House house, double cellMetres, int level)
    {
        Grid grid = LevelGrid.Over(house.Levels[level], cellMetres);
        for (int row = 0; row < grid.Rows; row++)
        {
            for (int column = 0; column < grid.Columns; column++)
            {
                Point2 centre = grid.CentreOf(column, row);
                if (LevelGrid.IsIndoors(house.Levels[level], centre))
                {
                    yield return centre.At(house.Levels[level].ElevationMetres + FieldRequest.SofaHandsMetres);
                }
            }
        }
    }

    private static void Line(TextWriter output, FormattableString text) =>
        output.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
