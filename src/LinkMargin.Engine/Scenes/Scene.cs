using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// A house laid out for tracing: flat arrays and an index, with numbers in place of names. It never changes, so any number of
/// threads may trace in it, each with a buffer of its own.
/// </summary>
public sealed class Scene
{
    // A line straight up or down has no direction on the plan: it gets one by tilting it by a hair, the same however the house is turned.
    private const double TiltMetres = 1e-6;

    private readonly Storey[] storeys;
    private readonly FloorSheets[] floors;
    private readonly FixtureBoxes fixtures;
    private readonly Dictionary<Material, int> numbers;
    private readonly CompiledHouse compiled;
    private readonly int[] rank; // of each material: the greater, the greater its loss

    internal Scene(CompiledHouse compiled)
    {
        this.compiled = compiled;
        storeys = compiled.Storeys;
        floors = compiled.Floors;
        fixtures = compiled.Fixtures;
        Uprights = compiled.Uprights;
        ReachMetres = Extent(compiled.House);
        Frame = WallDirection.Of(compiled.House);
        numbers = Materials.Select((m, i) => (m, i)).ToDictionary(pair => pair.m, pair => pair.i);
        TableLossesDb = [.. Materials.Select(m => m.LossDb)];
        rank = RankOf(Materials);
    }

    /// <summary>The house it was made from.</summary>
    public House House => compiled.House;

    /// <summary>The channels losses are averaged over.</summary>
    public Band Band => compiled.Band;

    /// <summary>The materials that hits refer to by number.</summary>
    internal IReadOnlyList<Material> Materials => compiled.Materials;

    /// <summary>The names that hits refer to by number.</summary>
    internal IReadOnlyList<string> Names => compiled.Names;

    /// <summary>Upright surfaces that reflect: walls that share a plane, and the sides of large fixtures.</summary>
    internal UprightMirror[] Uprights { get; }

    /// <summary>Level surfaces that reflect: floors and ceilings.</summary>
    internal IReadOnlyList<LevelMirror> Plates => compiled.Plates;

    /// <summary>The directions of its walls.</summary>
    internal PlanFrame Frame { get; }

    /// <summary>A distance that leaves the house from anywhere in it, metres.</summary>
    internal double ReachMetres { get; }

    /// <summary>The fixtures.</summary>
    internal IReadOnlyList<FixtureBox> Boxes => fixtures.Boxes;

    /// <summary>The fixtures that come within reach of a line on the plan.</summary>
    internal IEnumerable<FixtureBox> BoxesNear(Point2 from, Point2 to, double reachMetres) => fixtures.Near(from, to, reachMetres);

    /// <summary>The walls of each level.</summary>
    internal IReadOnlyList<Storey> Storeys => storeys;

    /// <summary>Each material's table loss, dB.</summary>
    internal double[] TableLossesDb { get; }

    /// <summary>The layers of a whole floor, by number; any other material is its own only layer.</summary>
    internal IReadOnlyList<int> LayersOf(int material) => compiled.FloorLayers.TryGetValue(material, out int[]? layers) ? layers : [material];

    /// <summary>The number of one of the scene's materials.</summary>
    internal int NumberOf(Material material) => numbers[material];

    /// <summary>The same without the body of a seat's player; materials and names keep their numbers.</summary>
    internal Scene Without(Seat seat) => new(compiled with
    {
        House = House with { Fixtures = [.. House.Fixtures.Where(fixture => fixture.Seat?.Name != seat.Name)] },
        Fixtures = new FixtureBoxes(
            [.. House.Fixtures.Zip(Boxes).Where(pair => pair.First.Seat?.Name != seat.Name).Select(pair => pair.Second)]),
    });

    /// <summary>The same with other radios.</summary>
    internal Scene With(Radio console, Radio controller) => new(compiled with { House = House with { Console = console, Controller = controller } });

    /// <summary>Lays out a house for the Bluetooth band.</summary>
    public static Scene Compile(House house) => SceneCompiler.Compile(house, Band.Bluetooth);

    /// <summary>
    /// Writes what the straight line crosses into the buffer, in order from its start; a joint of walls counts once. A floor is
    /// met layer by layer, or as one sheet and its joists.
    /// </summary>
    /// <param name="from">Its start.</param>
    /// <param name="to">Its end.</param>
    /// <param name="buffer">The thread's own.</param>
    /// <param name="wholeFloors">Whether a floor is met as one sheet and its joists.</param>
    /// <param name="around">The walls sorted around its start, where many lines start from there.</param>
    internal void Trace(Point3 from, Point3 to, TraceBuffer buffer, bool wholeFloors = false, WallsAround[]? around = null)
    {
        buffer.Clear();
        double length = from.DistanceTo(to);
        if (length <= GeometryTolerances.SlackMetres)
        {
            return; // the same place: nothing is in between
        }

        double low = Math.Min(from.Z, to.Z), high = Math.Max(from.Z, to.Z);
        for (int i = 0; i < storeys.Length; i++)
        {
            Storey storey = storeys[i];
            if (low <= storey.High + GeometryTolerances.SlackMetres && high >= storey.Low - GeometryTolerances.SlackMetres)
            {
                storey.Walls.Trace(from, to, around?[i], buffer);
            }
        }

        foreach (FloorSheets floor in floors)
        {
            floor.Trace(from, to, buffer, wholeFloors);
        }

        fixtures.Trace(from, to, buffer);
        HitOrder.Arrange(buffer, length, rank);
    }

    /// <summary>Each storey's walls sorted around a place.</summary>
    internal WallsAround[] Around(Point3 from) => [.. storeys.Select(storey => storey.Walls.Around(from))];

    /// <summary>Writes the pieces of obstacles in a straight ray's front into the buffer.</summary>
    internal void Gather(in Ray ray, TraceBuffer buffer)
    {
        buffer.PieceCount = 0;
        GatherUprights(ray, Fold.None, buffer);
        GatherLevels(ray, ray, Fold.None, buffer);
    }

    /// <summary>
    /// Writes the level pieces that the front of a path with one reflection meets, unfolded: those of the first leg as seen from the
    /// end's image, and those of the second leg as seen from the start's image.
    /// </summary>
    /// <param name="there">From the start to the image of the end, up to the mirror.</param>
    /// <param name="on">From the image of the start to the end, from the mirror.</param>
    /// <param name="fold">Where it is reflected.</param>
    /// <param name="buffer">The thread's own.</param>
    internal void GatherFoldedLevels(in Ray there, in Ray on, in Fold fold, TraceBuffer buffer)
    {
        buffer.PieceCount = 0;
        GatherLevels(there, fold.IsLevel ? on : there, fold, buffer);
        if (fold.IsLevel)
        {
            TurnOver(buffer.Pieces);
        }
        else
        {
            ExchangeSides(buffer.Pieces);
        }

        GatherLevels(on, on, fold, buffer);
    }

    /// <summary>Adds the upright pieces of the same path.</summary>
    internal void GatherFoldedUprights(in Ray there, in Ray on, in Fold fold, TraceBuffer buffer)
    {
        if (fold.IsLevel)
        {
            GatherUprights(on, fold, buffer); // both legs: on the plan they are one line
            return;
        }

        int first = buffer.PieceCount;
        GatherUprights(there, fold, buffer);
        ExchangeSides(buffer.Pieces[first..]);
        GatherUprights(on, fold, buffer);
    }

    // An image in a floor or ceiling has above and below exchanged.
    private static void TurnOver(Span<Piece> pieces)
    {
        foreach (ref Piece piece in pieces)
        {
            (piece.Bottom, piece.Top) = (-piece.Top, -piece.Bottom);
            piece.Plane = Piece.ImageOf(piece.Plane);
        }
    }

    // An image in an upright mirror has left and right exchanged.
    private static void ExchangeSides(Span<Piece> pieces)
    {
        foreach (ref Piece piece in pieces)
        {
            (piece.Low, piece.High) = (-piece.High, -piece.Low);
            piece.Plane = Piece.ImageOf(piece.Plane);
        }
    }

    private void GatherUprights(in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        if (!(ray.Least < ray.Greatest))
        {
            return; // too short for any obstacle
        }

        if (ray.PlanMetres < GeometryTolerances.SlackMetres)
        {
            fixtures.Gather(ray.Tilted(Frame.ToPlan(TiltMetres, 0)), fold, buffer); // straight up or down: no wall is abreast of it
            return;
        }

        (double least, double greatest) = fold.Heights(ray.From.Z, ray.To.Z);
        foreach (Storey storey in storeys)
        {
            if (least < storey.High && greatest > storey.Low)
            {
                storey.Fronts.Gather(ray, fold, buffer);
            }
        }

        fixtures.Gather(ray, fold, buffer);
    }

    // The uprights of the leg are in the front of a ray: its own, or that of both legs.
    private void GatherLevels(in Ray leg, in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        if (!(leg.Least < leg.Greatest))
        {
            return;
        }

        foreach (FloorSheets floor in floors)
        {
            floor.Gather(leg, buffer);
        }

        fixtures.GatherPlates(leg, ray, fold, buffer);
    }

    // By table loss, then by name: the numbers of materials depend on the order in which things are listed.
    private static int[] RankOf(IReadOnlyList<Material> materials)
    {
        int[] order = [.. Enumerable.Range(0, materials.Count)
            .OrderBy(i => materials[i].LossDb)
            .ThenBy(i => materials[i].Name, StringComparer.Ordinal)];
        var rank = new int[order.Length];
        for (int place = 0; place < order.Length; place++)
        {
            rank[order[place]] = place;
        }

        return rank;
    }

    private static double Extent(House house)
    {
        Point2[] corners =
        [
            .. house.Levels.SelectMany(l => l.Walls).SelectMany(w => new[] { w.Start, w.End }),
            .. house.Levels.SelectMany(l => l.Rooms).SelectMany(r => r.Outline.Corners),
        ];
        double plan = corners.Length == 0
            ? 0
            : double.Hypot(
                corners.Max(c => c.X) - corners.Min(c => c.X), corners.Max(c => c.Y) - corners.Min(c => c.Y));
        return plan + house.Levels[^1].CeilingMetres - house.Levels[0].ElevationMetres + 1;
    }
}
