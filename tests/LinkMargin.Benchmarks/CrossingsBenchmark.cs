using BenchmarkDotNet.Attributes;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Benchmarks;

/// <summary>Which walls a link crosses: the engine over a general-purpose library, warm, one thread.</summary>
[MemoryDiagnoser]
public class CrossingsBenchmark
{
    private const int Links = 1000;

    private readonly List<int> crossed = [];
    private (Point3 From, Point3 To)[] links = [];
    private GeneralPurposeCrossings? baseline;
    private EngineCrossings? engine;

    /// <summary>How many walls the storey has.</summary>
    [Params(50, 200, 1000, 5000)]
    public int Walls { get; set; }

    /// <summary>Builds both indexes and makes sure that they agree.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        House house = SyntheticHouse.OneStorey(Walls);
        links = RandomLinks.In(house, Links);
        EngineCrossings.AssertAgree(house, links);
        baseline = new GeneralPurposeCrossings(house.Levels[0]);
        engine = new EngineCrossings(house);
    }

    /// <summary>By the general-purpose library.</summary>
    [Benchmark(Baseline = true, OperationsPerInvoke = Links)]
    public int GeneralPurpose()
    {
        int found = 0;
        foreach ((Point3 from, Point3 to) in links)
        {
            found += baseline!.Find(from, to, crossed);
        }

        return found;
    }

    /// <summary>By the engine.</summary>
    [Benchmark(OperationsPerInvoke = Links)]
    public int Engine()
    {
        int found = 0;
        foreach ((Point3 from, Point3 to) in links)
        {
            found += engine!.Find(from, to);
        }

        return found;
    }
}
