using BenchmarkDotNet.Attributes;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Benchmarks;

/// <summary>Path loss of one link as the number of walls grows, one thread.</summary>
[MemoryDiagnoser]
public class LinkBenchmark
{
    private const int Places = 200;

    private readonly TraceBuffer buffer = new();
    private Point3[] places = [];
    private SpotModel? spot;

    /// <summary>How many walls the storey has.</summary>
    [Params(50, 200, 1000, 5000)]
    public int Walls { get; set; }

    /// <summary>How much of the physics is taken in.</summary>
    [ParamsAllValues]
    public ModelDepth Depth { get; set; }

    /// <summary>Lays the house out and chooses where the hands are.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        House house = SyntheticHouse.OneStorey(Walls);
        spot = new LinkModel(house, Depth).For(house.Spots[0]);
        places = [.. RandomLinks.From(house, house.PositionOf(house.Spots[0]), Places)];
    }

    /// <summary>One link.</summary>
    [Benchmark(OperationsPerInvoke = Places)]
    public double Link()
    {
        double sum = 0;
        foreach (Point3 place in places)
        {
            sum += spot!.PathLossDb(place, null, buffer);
        }

        return sum;
    }
}
