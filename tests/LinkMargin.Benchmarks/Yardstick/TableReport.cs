using System.Globalization;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Tables;

namespace LinkMargin.Benchmarks;

/// <summary>
/// Today's program against that of the yardstick's commit, on the frozen demo house. The physics has changed since, so times are compared and
/// not answers; the accuracy of maps is against every cell traced by today's code.
/// </summary>
internal static class TableReport
{
    private const int StartRuns = 30;

    // Of each whole program, taken in turn; the median counts.
    private const int ProgramRuns = 3;

    private const string EmptyProject = """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
          </PropertyGroup>
        </Project>
        """;

    /// <summary>Prints times and gives ratios.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="withPrograms">Whether whole programs are published and run as well.</param>
    internal static IReadOnlyList<Goal> Print(TextWriter output, bool withPrograms)
    {
        string repository = Processes.Repository(), scratch = Directory.CreateTempSubdirectory("linkmargin-yardstick-").FullName;
        try
        {
            output.WriteLine($"Building commit {YardstickBuild.Commit}{(withPrograms ? " and publishing both programs" : "")}; some minutes.");
            var yardstick = new YardstickBuild(repository, scratch);
            string house = FrozenHouse(repository);
            var goals = new List<Goal>();
            (IReadOnlyDictionary<string, double> before, IReadOnlyDictionary<string, double> now) = yardstick.Times(house);
            goals.AddRange(Engine(output, before, now, house));
            if (withPrograms)
            {
                string today = Path.Combine(scratch, "today");
                Processes.Run("dotnet", "publish", Path.Combine(repository, "src", "LinkMargin.Cli"), "-c", "Release", "-o", today);
                goals.AddRange(Programs(output, scratch, yardstick.Publish(), Path.Combine(today, "linkmargin"), house));
            }

            return goals;
        }
        finally
        {
            Directory.Delete(scratch, recursive: true);
        }
    }

    /// <summary>Prints times of two programs that are published already, and gives ratios.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="before">The yardstick's program.</param>
    /// <param name="now">Today's.</param>
    internal static IReadOnlyList<Goal> PrintPrograms(TextWriter output, string before, string now)
    {
        string scratch = Directory.CreateTempSubdirectory("linkmargin-yardstick-").FullName;
        try
        {
            return [.. Programs(output, scratch, Path.GetFullPath(before), Path.GetFullPath(now), FrozenHouse(Processes.Repository()))];
        }
        finally
        {
            Directory.Delete(scratch, recursive: true);
        }
    }

    private static string FrozenHouse(string repository) => Path.Combine(repository, "tests", "LinkMargin.Benchmarks", "Yardstick", "frozen-demo.yaml");

    // The rows that need no published program.
    private static IEnumerable<Goal> Engine(
        TextWriter output, IReadOnlyDictionary<string, double> before, IReadOnlyDictionary<string, double> now, string path)
    {
        House house = YardstickProbe.Frozen(path);
        var model = new LinkModel(house);
        yield return Faster(output, "exact link or cell", before[YardstickProbe.ExactLink], now[YardstickProbe.ExactLink], 2.5, 4);

        // The yardstick's time is for cells of 0.2 m, each traced, so a quarter of the cells.
        double map = YardstickProbe.Best(() => Maps(model, [house.Spots[0]], 0.1, FieldStage.Map, 1), 2);
        yield return Faster(output, "map at 0.1 m of a whole house", 4 * before[YardstickProbe.ExactField], map, 8, 12);
        double[] errorsDb = ErrorsDb(model, 0.1, FieldStage.Map);
        yield return new Goal("error of that map outside fixtures, 99 % of cells, dB", At(errorsDb, 0.99), 0.3, 0.2, IsMost: true);
        yield return new Goal("the same, worst cell, dB", errorsDb[^1], 1.5, 1, IsMost: true);

        var basis = new UncertaintyBasis(MaterialTablesFile.ReadBuiltIn().Tables!.Spreads!);
        Spot[] moved = [.. Enumerable.Range(0, 8).Select(i => house.Spots[0] with { Name = $"moved {i}", Plan = house.Spots[0].Plan + new Point2(0.02 * i, 0.01 * i) })];
        FieldAllowance[] allowances = [.. Levels(model).Select(level => FieldAllowance.Of(model, Coarse(model, house.Spots[0], level), basis, UncertaintyBasis.UsualConfidence))];
        double drag = YardstickProbe.Best(() => Array.ForEach(moved, spot => Drag(model, spot, allowances)), 2) / moved.Length;
        yield return new Goal("whole-house field at 0.25 m for dragging, a second", 1 / drag, 20, 60);
        yield return new Goal("its margin to count on, 95 % of cells, dB off", DragErrorDb(model, moved[^1], allowances, basis), 1, 1, IsMost: true);
        double seats = YardstickProbe.Best(() => Array.ForEach(moved, spot => _ = HouseUncertainty.Of(model, [spot], house.Seats, basis)), 3) / moved.Length;
        yield return new Goal("a moved console: figures of all seats, ms", 1000 * seats, 25, 10, IsMost: true);
        yield return Faster(output, "a front sum", before[YardstickProbe.FrontSums], now[YardstickProbe.FrontSums], 2, 4);
        yield return new Goal("compiling 5,100 walls, s", now[YardstickProbe.Layout], 1, 0.3, IsMost: true);
        double one = YardstickProbe.Best(() => Maps(model, house.Spots, 0.2, FieldStage.Exact, 1), 2), two = YardstickProbe.Best(() => Maps(model, house.Spots, 0.2, FieldStage.Exact, 2), 2);
        yield return new Goal("two threads against one", one / two, 1.85, 1.95);
        yield return new Goal("5,000 walls against 50, full model, same links", ShortReport.LinkRatio(ModelDepth.Full, 50, 5000), 3, 2, IsMost: true);
    }

    // Whole runs: processor time of the demo and of searches, and the start of explain against an empty program.
    private static IEnumerable<Goal> Programs(TextWriter output, string scratch, string before, string now, string house)
    {
        string Folder(string name) => Path.Combine(scratch, name);
        foreach ((string[] work, double bar, double aim) in new[]
        {
            (new[] { "demo", "--force", "--out", Folder("demo") }, 8.0, 15.0),
            (["place", house, "--force", "--out", Folder("places")], 4, 10),
            (["improve", house, "--force"], 4, 10),
        })
        {
            double[] timesBefore = new double[ProgramRuns], timesNow = new double[ProgramRuns];
            for (int i = 0; i < ProgramRuns; i++)
            {
                timesBefore[i] = Processes.Run(before, work).ProcessorSeconds;
                timesNow[i] = Processes.Run(now, work).ProcessorSeconds;
            }

            yield return Faster(output, $"{work[0]}, published: processor time", Processes.Median(timesBefore), Processes.Median(timesNow), bar, aim);
        }

        Directory.CreateDirectory(Folder("empty"));
        File.WriteAllText(Path.Combine(Folder("empty"), "empty.csproj"), EmptyProject);
        File.WriteAllText(Path.Combine(Folder("empty"), "Program.cs"), "return 0;");
        Processes.Run("dotnet", "publish", Folder("empty"), "-c", "Release", "-o", Folder("nothing"));
        var explain = new List<double>();
        var nothing = new List<double>();
        string[] arguments = ["explain", house, "--spot", "larder shelf", "--seat", "lounge sofa"];
        Processes.Run(now, arguments);
        for (int i = 0; i < StartRuns; i++)
        {
            explain.Add(Processes.Run(now, arguments).Seconds);
            nothing.Add(Processes.Run(Path.Combine(Folder("nothing"), "empty")).Seconds);
        }

        yield return new Goal("explain, published, against an empty program", Processes.Median(explain) / Processes.Median(nothing), 2.2, 1.5, IsMost: true);
        string clone = Folder("clone");
        Processes.Run("git", "clone", "--quiet", Processes.Repository(), clone);
        double fresh = Processes.Run("dotnet", "run", "--project", Path.Combine(clone, "src", "LinkMargin.Cli"), "--", "demo", "--out", Folder("demo-clone")).Seconds;
        yield return new Goal("demo from a fresh clone, packages in the cache, s", fresh, 60, 40, IsMost: true);
    }

    private static void Maps(LinkModel model, IEnumerable<Spot> spots, double cellMetres, FieldStage stage, int threads)
    {
        foreach (Spot spot in spots)
        {
            for (int level = 0; level < model.House.Levels.Count; level++)
            {
                FieldComputation.Compute(model, new FieldRequest(spot, level) { CellMetres = cellMetres, Stage = stage, Threads = threads });
            }
        }
    }

    // What a page computes for every place that a console is dragged over.
    private static Field[] Drag(LinkModel model, Spot spot, FieldAllowance[] allowances) =>
        [.. Levels(model).Select(level => allowances[level].AddTo(Coarse(model, spot, level)))];

    private static Field Coarse(LinkModel model, Spot spot, int level) =>
        FieldComputation.Compute(model, new FieldRequest(spot, level) { CellMetres = 0.25, Stage = FieldStage.Coarse });

    private static IEnumerable<int> Levels(LinkModel model) => Enumerable.Range(0, model.House.Levels.Count);

    private static double DragErrorDb(LinkModel model, Spot spot, FieldAllowance[] allowances, UncertaintyBasis basis)
    {
        Field[] dragged = Drag(model, spot, allowances);
        IEnumerable<double> errorsDb = dragged.SelectMany((field, level) =>
        {
            Field exact = FieldComputation.Compute(model, new FieldRequest(spot, level) { CellMetres = 0.25 });
            Field counted = FieldAtConfidence.Of(model, exact, basis, UncertaintyBasis.UsualConfidence);
            return field.MarginDb.Zip(counted.MarginDb, (one, other) => Math.Abs(one - other)).Where(double.IsFinite);
        });
        return At([.. errorsDb.Order()], 0.95);
    }

    private static double[] ErrorsDb(LinkModel model, double cellMetres, FieldStage stage)
    {
        var errorsDb = new List<double>();
        foreach (Spot spot in model.House.Spots)
        {
            for (int level = 0; level < model.House.Levels.Count; level++)
            {
                var field = new ProgressiveField(model, new FieldRequest(spot, level) { CellMetres = cellMetres });
                field.Advance(stage);
                Field map = field.Current();
                field.Advance(FieldStage.Exact);
                Field exact = field.Current();
                double handsZ = model.House.Levels[level].ElevationMetres + map.HandsMetres;
                for (int cell = 0; cell < map.Grid.Count; cell++)
                {
                    Point2 centre = map.Grid.CentreOf(cell % map.Grid.Columns, cell / map.Grid.Columns);
                    if (double.IsFinite(exact.MarginDb[cell])
                        && !model.Scene.Boxes.Any(box => box.VerticalExtent.Low < handsZ && box.VerticalExtent.High > handsZ && box.DepthOf(centre) > 0))
                    {
                        errorsDb.Add(Math.Abs(map.MarginDb[cell] - exact.MarginDb[cell]));
                    }
                }
            }
        }

        return [.. errorsDb.Order()];
    }

    private static double At(double[] ordered, double share) => ordered[(int)(share * ordered.Length)];

    private static Goal Faster(TextWriter output, string work, double before, double now, double bar, double aim)
    {
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{work}: {before:G4} s before, {now:G4} s now"));
        return new Goal($"{work}, times as fast", before / now, bar, aim);
    }
}
