using LinkMargin.Engine.Diffuse;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links.Around;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>
/// The straight line with its edges, first reflections and the diffuse field, each with what the player's body leaves of it.
/// The local mean is the sum of their powers.
/// </summary>
internal sealed class FullSpotModel : SpotModel
{
    // A reflection or way round that adds less than this share of the direct line and the diffuse field, 0.02 dB, is left out;
    // up to twice as much it fades in, so that leaving out makes no step.
    private const double LeastShare = 0.005;

    // The mirror itself stands at the end of one leg and the start of the other: a hair short of it.
    private const double ShortOfMirror = 1e-5;

    private readonly LossTables losses;
    private readonly BodyShadow body;
    private readonly DiffuseField diffuse;
    private readonly WaysRound waysRound;
    private readonly Cells cells;
    private readonly RoomShell shell;
    private readonly double wavelength;

    internal FullSpotModel(
        Scene scene, Spot spot, LossTables losses, Cells cells, RoomShell shell, BendGraph bends, BodyShadow body)
        : base(scene, spot)
    {
        this.losses = losses;
        this.body = body;
        this.cells = cells;
        this.shell = shell;
        wavelength = scene.Band.Equivalent.WavelengthMetres;
        waysRound = new WaysRound(scene, losses, bends, body, Console);
        diffuse = new DiffuseField(scene, losses, cells, shell, Console);
    }

    /// <summary>What a path that could be left out counts for, by the least power that is not.</summary>
    internal static double Counted(double power, double least) =>
        power <= least ? 0 : power >= 2 * least ? power : power * ((power / least) - 1);

    internal override double PathLossDb(Point3 hands, double? facingDegrees, TraceBuffer buffer)
    {
        double sum = DirectPower(hands, facingDegrees, buffer) + DiffusePower(hands), least = sum * LeastShare;
        foreach (UprightMirror mirror in Scene.Uprights)
        {
            if (Mirror.InUpright(mirror, Console, hands, wavelength, losses, buffer, out Reflection reflection))
            {
                sum += ReflectedPower(reflection, hands, facingDegrees, buffer, least);
            }
        }

        foreach (LevelMirror mirror in Scene.Plates)
        {
            if (Mirror.InLevel(mirror, Console, hands, wavelength, losses, out Reflection reflection))
            {
                sum += ReflectedPower(reflection, hands, facingDegrees, buffer, least);
            }
        }

        Span<WayRound> ways = stackalloc WayRound[WaysRound.Most];
        int count = waysRound.To(hands, facingDegrees, least, buffer, ways);
        for (int i = 0; i < count; i++)
        {
            sum += ways[i].Power;
        }

        return ToLossDb(sum);
    }

    internal override IReadOnlyList<PathBudget> Paths(Point3 hands, double? facingDegrees)
    {
        var buffer = new TraceBuffer();
        double even = DiffusePower(hands), least = (DirectPower(hands, facingDegrees, buffer) + even) * LeastShare;
        var paths = new List<PathBudget> { DirectBudget(hands, facingDegrees, buffer) };
        if (even > 0)
        {
            paths.Add(DiffuseBudget(hands, even));
        }

        foreach (UprightMirror mirror in Scene.Uprights)
        {
            if (Mirror.InUpright(mirror, Console, hands, wavelength, losses, buffer, out Reflection reflection))
            {
                MirrorPanel panel = mirror.PanelAt(reflection.Place);
                Add(
                    reflection,
                    mirror.IsFixture ? TurnKind.Fixture : TurnKind.Wall,
                    Scene.Names[panel.Name],
                    cells.LevelAt(Math.Clamp(reflection.Place.Z, panel.Rise.Low, panel.Rise.High)));
            }
        }

        foreach (LevelMirror mirror in Scene.Plates)
        {
            if (Mirror.InLevel(mirror, Console, hands, wavelength, losses, out Reflection reflection))
            {
                TurnKind kind = mirror.FacesUp ? TurnKind.Floor : TurnKind.Ceiling;
                Add(reflection, kind, Scene.House.Levels[mirror.Level].Name, mirror.Level);
            }
        }

        Span<WayRound> ways = stackalloc WayRound[WaysRound.Most];
        int count = waysRound.To(hands, facingDegrees, least, buffer, ways);
        for (int i = 0; i < count; i++)
        {
            paths.Add(AroundBudget(ways[i], hands, buffer));
        }

        return [.. paths.OrderBy(path => path.LossDb)];

        void Add(Reflection reflection, TurnKind kind, string name, int level)
        {
            double power = ReflectedPower(reflection, hands, facingDegrees, buffer, least);
            if (power > 0)
            {
                var turn = new PathTurn(kind, name, level, Console.DistanceTo(reflection.Place))
                {
                    IncidenceDegrees = double.RadiansToDegrees(Math.Acos(reflection.CosIncidence)),
                };
                paths.Add(ReflectedBudget(reflection, hands, facingDegrees, power, turn, buffer));
            }
        }
    }

    private static double ToLossDb(double powerRatio) =>
        Math.Min(LayeredSlab.GreatestLossDb, -Decibels.FromPowerRatio(Math.Max(powerRatio, double.Epsilon)));

    private double FreeSpace(double lengthMetres) => Decibels.ToPowerRatio(-FreeSpaceLoss.Db(lengthMetres, Scene.Band.Equivalent));

    private double DirectPower(Point3 hands, double? facingDegrees, TraceBuffer buffer)
    {
        if (Console == hands)
        {
            return 1;
        }

        var ray = new Ray(Console, hands, wavelength);
        Scene.Gather(ray, buffer);
        return FreeSpace(ray.LengthMetres)
            * FrontSum.PowerRatio(buffer.Pieces, losses)
            * body.Factor(Console, hands, facingDegrees);
    }

    private double DiffusePower(Point3 hands)
    {
        // An antenna in an even field of unknown polarisation takes in λ²/8π of it, whatever its pattern.
        return diffuse.At(hands) * wavelength * wavelength / (8 * Math.PI) * body.Diffuse;
    }

    private double ReflectedPower(
        in Reflection reflection, Point3 hands, double? facingDegrees, TraceBuffer buffer, double least)
    {
        // Nothing on its way adds to a path's power, so one that is too weak here already is too weak at its end.
        double power = FreeSpace(reflection.LengthMetres) * reflection.PowerRatio;
        if (power <= least)
        {
            return 0;
        }

        power *= body.Factor(reflection.Image, hands, facingDegrees);
        if (power <= least)
        {
            return 0;
        }

        Scene.GatherFolded(
            new Ray(Console, reflection.ImageOfEnd, wavelength, 0, reflection.Share),
            new Ray(reflection.Image, hands, wavelength, reflection.Share),
            reflection.Fold,
            buffer);
        return Counted(power * FrontSum.PowerRatio(buffer.Pieces, losses, least / power), least);
    }

    private PathBudget DirectBudget(Point3 hands, double? facingDegrees, TraceBuffer buffer)
    {
        double lossDb = ToLossDb(DirectPower(hands, facingDegrees, buffer));
        Crossing[] crossings = Itemisation.Crossings(Scene, Console, hands, buffer, wholeFloors: true);
        double length = Console.DistanceTo(hands);
        double bodyDb = Console == hands ? 0 : -Decibels.FromPowerRatio(body.Factor(Console, hands, facingDegrees));
        return Itemised(new Path(PathKind.Direct, [Console, hands], length, crossings), lossDb, 0, bodyDb, []);
    }

    private PathBudget ReflectedBudget(
        in Reflection reflection, Point3 hands, double? facingDegrees, double power, PathTurn turn, TraceBuffer buffer)
    {
        Point3 place = reflection.Place;
        Crossing[] there = Itemisation.Crossings(
            Scene, Console, Console.Towards(place, 1 - ShortOfMirror), buffer, wholeFloors: true);
        Crossing[] on = Itemisation.Crossings(
            Scene, place.Towards(hands, ShortOfMirror), hands, buffer, wholeFloors: true, Console.DistanceTo(place));
        var path = new Path(PathKind.Reflected, [Console, place, hands], reflection.LengthMetres, [.. there, .. on]);
        return Itemised(
            path,
            ToLossDb(power),
            -Decibels.FromPowerRatio(reflection.PowerRatio),
            -Decibels.FromPowerRatio(body.Factor(reflection.Image, hands, facingDegrees)),
            [turn]);
    }

    private PathBudget AroundBudget(in WayRound way, Point3 hands, TraceBuffer buffer)
    {
        var corners = new Point3[WaysRound.MostCorners];
        Array.Resize(ref corners, waysRound.Corners(way, hands, corners));
        var crossings = new List<Crossing>();
        double run = 0;
        for (int i = 0; i + 1 < corners.Length; i++)
        {
            crossings.AddRange(Itemisation.Crossings(Scene, corners[i], corners[i + 1], buffer, wholeFloors: true, run));
            run += corners[i].DistanceTo(corners[i + 1]);
        }

        var path = new Path(PathKind.Around, corners, way.Metres, crossings);
        return Itemised(
            path, ToLossDb(way.Power), 0, -Decibels.FromPowerRatio(way.Body), waysRound.Turns(way), way.BendDb);
    }

    private PathBudget Itemised(
        Path path, double lossDb, double reflectionDb, double bodyDb, IReadOnlyList<PathTurn> turns, double bendingDb = 0)
    {
        double freeSpaceDb = FreeSpaceLoss.Db(path.LengthMetres, Scene.Band.Equivalent);
        double[] crossingsDb = [.. path.Crossings.Select(c => CrossingLoss.Db(
            c.Kind,
            c.Share,
            losses[Scene.NumberOf(c.Material)].LossDb(
                c.Kind == ObstacleKind.Joists ? 1 : Math.Cos(double.DegreesToRadians(c.IncidenceDegrees)))))];
        return new PathBudget(path, freeSpaceDb, crossingsDb, lossDb)
        {
            EdgesDb = lossDb - freeSpaceDb - crossingsDb.Sum() - reflectionDb - bendingDb - bodyDb,
            BendingDb = bendingDb,
            ReflectionDb = reflectionDb,
            BodyDb = bodyDb,
            Turns = turns,
            Bases =
            [
                .. path.Crossings.Select(c => c.Kind == ObstacleKind.Joists
                    ? LossBasis.JoistShare
                    : losses[Scene.NumberOf(c.Material)].Basis),
            ],
        };
    }

    private PathBudget DiffuseBudget(Point3 hands, double power)
    {
        double bodyDb = -Decibels.FromPowerRatio(body.Diffuse), lossDb = ToLossDb(power);
        double length = Console.DistanceTo(hands) + shell.Balance.LifeMetres(cells.At(hands));
        return new PathBudget(new Path(PathKind.Diffuse, [Console, hands], length, []), 0, [], lossDb)
        {
            Bases = [],
            BodyDb = bodyDb,
            DiffuseDb = lossDb - bodyDb,
        };
    }
}
