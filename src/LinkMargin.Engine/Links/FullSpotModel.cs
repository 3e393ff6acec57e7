using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Links;

/// <summary>
/// The straight line with its edges, first reflections and the diffuse field, each with what the player's body leaves of it.
/// The local mean is the sum of their powers.
/// </summary>
internal sealed class FullSpotModel : SpotModel
{
    // A reflection or way round that adds less than this share of the direct line and the diffuse field, 0.02 dB, is left out;
    // up to twice as much it fades in, so that leaving out makes no step.
    internal const double LeastShare = 0.005;

    private readonly Lazy<ShiftedFields> shifted;
    private readonly ParallelWalls walls;
    private readonly double wavelength;
    private readonly bool isBackwards; // read from the player's end: the body is where the paths start

    internal FullSpotModel(
        Scene scene,
        Spot spot,
        LossTables losses,
        Cells cells,
        RoomShell shell,
        EdgeGraph edges,
        BodyShadow body,
        ParallelWalls walls,
        ShiftedRooms shifted,
        bool isBackwards = false)
        : base(scene, spot)
    {
        Losses = losses;
        Body = body;
        this.walls = walls;
        this.isBackwards = isBackwards;
        Cells = cells;
        Shell = shell;
        this.shifted = new(() => shifted.FieldsFrom(Console));
        wavelength = scene.Band.Equivalent.WavelengthMetres;
        DiffractedPaths = new DiffractedPaths(scene, losses, edges, body, Console, isBackwards);
        Diffuse = new DiffuseField(cells, shell, Console);
    }

    /// <summary>What a path that could be left out counts for, by the least power that is not.</summary>
    internal static double Counted(double power, double least) =>
        power <= least ? 0 : power >= 2 * least ? power : power * ((power / least) - 1);

    /// <summary>Its ways round.</summary>
    internal DiffractedPaths DiffractedPaths { get; }

    /// <summary>Its diffuse field.</summary>
    internal DiffuseField Diffuse { get; }

    /// <summary>Its diffuse field with each material's loss shifted in turn.</summary>
    internal ShiftedFields Shifted => shifted.Value;

    /// <summary>The losses of the house.</summary>
    internal LossTables Losses { get; }

    /// <summary>The rooms.</summary>
    internal Cells Cells { get; }

    /// <summary>The power balance of the rooms.</summary>
    internal RoomShell Shell { get; }

    /// <summary>What the player's body leaves of a path, and of the diffuse field.</summary>
    internal BodyShadow Body { get; }

    internal override double PathLossDb(Point3 hands, double? facingDegrees, TraceBuffer buffer)
    {
        var sum = default(PowerSum);
        Visit(hands, facingDegrees, buffer, ref sum);
        return ToLossDb(sum.Power);
    }

    internal override IReadOnlyList<PathBudget> Paths(Point3 hands, double? facingDegrees)
    {
        var buffer = new TraceBuffer();
        var budgets = new PathItemiser(this, hands, facingDegrees);
        Visit(hands, facingDegrees, buffer, ref budgets);
        return [.. budgets.Budgets.OrderBy(path => path.LossDb)];
    }

    internal override StoredLink Store(Point3 hands, double? facingDegrees, GradientRecorder book)
    {
        var store = new LinkStore(this, hands, book);
        Visit(hands, facingDegrees, new TraceBuffer(), ref store);
        return book.Close();
    }

    /// <summary>Looks at every path to a place in turn, always in the same order.</summary>
    /// <param name="hands">The place.</param>
    /// <param name="facingDegrees">Where the player looks; null for the mean over all directions.</param>
    /// <param name="buffer">The thread's own; a visitor finds the pieces of the path's front in it.</param>
    /// <param name="visitor">What to do with each.</param>
    internal void Visit<TVisitor>(Point3 hands, double? facingDegrees, TraceBuffer buffer, ref TVisitor visitor)
        where TVisitor : IPathVisitor
    {
        double direct = DirectPower(hands, facingDegrees, buffer);
        visitor.Direct(direct, buffer);
        double even = DiffusePower(hands), least = (direct + even) * LeastShare;
        visitor.Diffuse(even);
        foreach (UprightMirror mirror in Scene.Uprights)
        {
            if (MirrorView.TryOf(mirror, Console, hands, out MirrorView view)
                && !IsHopeless(mirror, view, hands, least)
                && Mirror.InUpright(mirror, view, Console, hands, wavelength, Losses, buffer, out Reflection reflection)
                && ReflectedPower(reflection, hands, facingDegrees, buffer, least) is double power and > 0)
            {
                visitor.Upright(mirror, reflection, power, buffer);
            }
        }

        foreach (LevelMirror mirror in Scene.Plates)
        {
            if (Mirror.InLevel(mirror, Console, hands, wavelength, Losses, out Reflection reflection)
                && ReflectedPower(reflection, hands, facingDegrees, buffer, least) is double power and > 0)
            {
                visitor.Level(mirror, reflection, power, buffer);
            }
        }

        Span<DiffractedPath> ways = stackalloc DiffractedPath[DiffractedPaths.Most];
        foreach (ref readonly DiffractedPath way in ways[..DiffractedPaths.To(hands, facingDegrees, least, buffer, ways)])
        {
            visitor.Around(way, buffer);
        }
    }

    private double FreeSpace(double lengthMetres) => FreeSpaceLoss.PowerRatio(lengthMetres, wavelength);

    private double DirectPower(Point3 hands, double? facingDegrees, TraceBuffer buffer)
    {
        if (Console == hands)
        {
            buffer.PieceCount = 0;
            return 1;
        }

        var ray = new Ray(Console, hands, wavelength);
        Scene.Gather(ray, buffer);
        return FreeSpace(ray.LengthMetres)
            * FrontSum.PowerRatio(buffer.Pieces, Losses)
            * (isBackwards ? Body.Factor(hands, Console, facingDegrees) : Body.Factor(Console, hands, facingDegrees));
    }

    private double DiffusePower(Point3 hands)
    {
        // An antenna in an even field of unknown polarisation takes in λ²/8π of it, whatever its pattern.
        return Diffuse.At(hands) * wavelength * wavelength / (8 * Math.PI) * Body.Diffuse;
    }

    private bool IsHopeless(UprightMirror mirror, in MirrorView view, Point3 hands, double least)
    {
        double free = FreeSpace(view.LengthMetres);
        return free <= least || free * walls.Most(mirror, view, Console, hands, wavelength, least / free) <= least;
    }

    private double ReflectedPower(
        in Reflection reflection, Point3 hands, double? facingDegrees, TraceBuffer buffer, double least)
    {
        // Nothing on its way adds to a path's power, so one that is too weak here already is too weak at its end.
        double power = FreeSpace(reflection.LengthMetres) * reflection.PowerRatio
            * (isBackwards ? Body.Factor(reflection.ImageOfEnd, Console, facingDegrees) : Body.Factor(reflection.Image, hands, facingDegrees));
        if (power <= least)
        {
            return 0;
        }

        Ray there = reflection.There(Console, wavelength), on = reflection.On(hands, wavelength);
        Scene.GatherFoldedLevels(there, on, buffer);
        if (FrontSum.PowerRatio(buffer.Pieces, Losses, least / power) * power <= least)
        {
            return 0; // floors alone take too much of it
        }

        Scene.GatherFoldedUprights(there, on, reflection.Fold, buffer);
        return Counted(power * FrontSum.PowerRatio(buffer.Pieces, Losses, least / power), least);
    }
}
