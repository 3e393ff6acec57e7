using BenchmarkDotNet.Attributes;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Benchmarks;

/// <summary>The margin over a whole house of three storeys in cells of 0.1 m, one thread.</summary>
[MemoryDiagnoser]
public class FieldBenchmark
{
    private LinkModel? model;

    /// <summary>How much of the physics is taken in.</summary>
    [ParamsAllValues]
    public ModelDepth Depth { get; set; }

    /// <summary>Lays the house out.</summary>
    [GlobalSetup]
    public void Prepare() => model = new LinkModel(SyntheticHouse.ThreeStoreys(), Depth);

    /// <summary>One field for each level.</summary>
    [Benchmark]
    public int WholeHouse() => Compute(model!, threads: 1);

    /// <summary>Computes every level's field for the first spot.</summary>
    /// <returns>How many cells there are.</returns>
    internal static int Compute(LinkModel model, int threads)
    {
        int cells = 0;
        Spot spot = model.House.Spots[0];
        for (int level = 0; level < model.House.Levels.Count; level++)
        {
            cells += FieldComputation.Compute(model, new FieldRequest(spot, level) { Threads = threads }).Grid.Count;
        }

        return cells;
    }
}
