using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Benchmarks;

/// <summary>What the engine finds on the same lines: walls and openings, in order, with angles, joints counted once.</summary>
internal sealed class EngineCrossings(House house)
{
    private readonly Scene scene = Scene.Compile(house);
    private readonly TraceBuffer buffer = new();

    internal int Find(Point3 from, Point3 to)
    {
        scene.Trace(from, to, buffer);
        return buffer.Count;
    }

    /// <summary>Throws unless both find the same walls on every link.</summary>
    internal static void AssertAgree(House house, (Point3 From, Point3 To)[] links)
    {
        var baseline = new GeneralPurposeCrossings(house.Levels[0]);
        var engine = new EngineCrossings(house);
        var crossed = new List<int>();
        IReadOnlyList<Wall> walls = house.Levels[0].Walls;
        foreach ((Point3 from, Point3 to) in links)
        {
            baseline.Find(from, to, crossed);
            engine.Find(from, to);
            string[] expected = [.. crossed.Select(i => walls[i].Name).Order(StringComparer.Ordinal)];
            if (!engine.NamesOfWalls().Order(StringComparer.Ordinal).SequenceEqual(expected))
            {
                throw new InvalidOperationException($"Engine and baseline differ on the link from {from} to {to}.");
            }
        }
    }

    /// <summary>The same for links that set out from one place.</summary>
    internal static void AssertAgreeFrom(House house, Point3 from, (Point3 From, Point3 To)[] links)
    {
        var baseline = new GeneralPurposeCrossings(house.Levels[0]);
        WallsAround around = Scene.Compile(house).Around(from)[0];
        var crossed = new List<int>();
        int[] found = new int[64];
        foreach ((Point3 _, Point3 to) in links)
        {
            baseline.Find(from, to, crossed);
            int count = around.Find(to, ref found);
            if (!found[..count].Order().SequenceEqual(crossed.Order()))
            {
                throw new InvalidOperationException($"Engine and baseline differ on the link from {from} to {to}.");
            }
        }
    }

    // A door is named after its wall.
    private string[] NamesOfWalls()
    {
        var names = new string[buffer.Count];
        for (int i = 0; i < names.Length; i++)
        {
            string name = scene.Names[buffer.Hits[i].Name];
            names[i] = name.StartsWith("door ", StringComparison.Ordinal) ? name["door ".Length..] : name;
        }

        return names;
    }
}
