using System.Diagnostics;
using System.Globalization;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
#if YARDSTICK
using LinkMargin.Engine.Scenes;
#else
using LinkMargin.Engine.Wavefront;
#endif
using LinkMargin.Files.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Benchmarks;

/// <summary>
/// The same work by today's engine and by that of the yardstick's commit: this file is compiled against both. What it prints is a
/// name and a time on each line.
/// </summary>
internal static class YardstickProbe
{
    internal const string ExactLink = "exact-link-seconds";
    internal const string ExactField = "exact-field-seconds";
    internal const string FrontSums = "front-sum-seconds";
    internal const string Layout = "layout-seconds";

    /// <summary>The argument with which this program prints these times of today's code.</summary>
    internal const string Command = "times";

    /// <summary>The frozen demo house.</summary>
    internal static House Frozen(string path) =>
        HouseFile.Parse(File.ReadAllText(path), "the frozen demo house", MaterialTablesFile.ReadBuiltIn().Tables!).House!;

    internal static void Print(string path, TextWriter output)
    {
        House house = Frozen(path);
        var model = new LinkModel(house);
        Say(output, ExactLink, Best(() => Fields(model, house.Spots, 0.5, 1), 3));
        Say(output, ExactField, Best(() => Fields(model, house.Spots.Take(1), 0.2, 1), 2));
        Say(output, FrontSums, SumFronts(model, house));
        House large = SyntheticHouse.OneStorey(5000);
        Say(output, Layout, Best(() => _ = new LinkModel(large), 2));
    }

    /// <summary>Computes every cell of all levels.</summary>
    internal static void Fields(LinkModel model, IEnumerable<Spot> spots, double cellMetres, int? threads)
    {
        foreach (Spot spot in spots)
        {
            for (int level = 0; level < model.House.Levels.Count; level++)
            {
                FieldComputation.Compute(model, new FieldRequest(spot, level) { CellMetres = cellMetres, Threads = threads });
            }
        }
    }

    /// <summary>The least time of some runs, after one that is not counted.</summary>
    internal static double Best(Action run, int runs)
    {
        run();
        double best = double.PositiveInfinity;
        for (int i = 0; i < runs; i++)
        {
            var watch = Stopwatch.StartNew();
            run();
            best = Math.Min(best, watch.Elapsed.TotalSeconds);
        }

        return best;
    }

    // The fronts of straight lines from the first spot to places all over its level.
    private static double SumFronts(LinkModel model, House house)
    {
        var spot = (FullSpotModel)model.For(house.Spots[0]);
#if YARDSTICK
        LossTables losses = spot.Losses;
#else
        LossTables losses = spot.House.Losses;
#endif
        Level level = house.Levels[house.Spots[0].LevelIndex];
        Grid grid = LevelGrid.Over(level, 0.4);
        var buffer = new TraceBuffer();
        var fronts = new List<Piece[]>();
        for (int cell = 0; cell < grid.Count; cell++)
        {
            Point3 place = grid.CentreOf(cell % grid.Columns, cell / grid.Columns).At(level.ElevationMetres + 0.7);
            spot.Scene.Gather(new Ray(spot.Console, place, spot.Scene.Band.Equivalent.WavelengthMetres), buffer);
            fronts.Add(buffer.Pieces.ToArray());
        }

        double sum = 0;
        return Best(
            () =>
            {
                for (int again = 0; again < 50; again++)
                {
                    foreach (Piece[] front in fronts)
                    {
                        sum += FrontSum.PowerRatio(front, losses);
                    }
                }
            },
            5);
    }

    private static void Say(TextWriter output, string name, double seconds) =>
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name} {seconds:R}"));
}
