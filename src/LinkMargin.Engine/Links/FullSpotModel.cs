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
    // A reflection that could add less than this share of what arrives without any, 0.02 dB, is not traced; nor a way round
    // that could add less than this share of what arrives without it. So the order of the mirrors plays no part.
    private const double LeastShare = 0.005;

    // What the straight legs of a reflection lose may be less by so much where edges pass energy beside what they cross.
    private const double BesideLegs = 8;

    // The mirror itself stands at the end of one leg and the start of the other: a hair short of it.
    private const double ShortOfMirror = 1e-5;

    private readonly LossTables losses;
    private readonly MirrorView mirrors;
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
        mirrors = new MirrorView(scene, losses, Console);
        waysRound = new WaysRound(scene, losses, bends, Console);
        diffuse = new DiffuseField(scene, losses, cells, shell, Console);
    }

    internal override double PathLossDb(Point3 hands, double? facingDegrees, TraceBuffer buffer)
    {
        double sum = DirectPower(hands, facingDegrees, buffer) + DiffusePower(hands);
        double straight = FreeSpace(Console.DistanceTo(hands));
        double least = sum * LeastShare;
        foreach ((UprightMirror mirror, double leastDb) in mirrors.Uprights)
        {
            if (IsHidden(leastDb, straight, least))
            {
                break;
            }

            if (Mirror.InUpright(mirror, Console, hands, wavelength, losses, out Reflection reflection))
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
        int count = waysRound.To(hands, sum * LeastShare, buffer, ways);
        for (int i = 0; i < count; i++)
        {
            sum += ways[i].Power * body.Factor(ways[i].Place, hands, facingDegrees);
        }

        return ToLossDb(sum);
    }

    internal override IReadOnlyList<PathBudget> Paths(Point3 hands, double? facingDegrees)
    {
        var buffer = new TraceBuffer();
        double sum = DirectPower(hands, facingDegrees, buffer) + DiffusePower(hands);
        var paths = new List<PathBudget> { DirectBudget(hands, facingDegrees, buffer) };
        if (DiffusePower(hands) is double even and > 0)
        {
            paths.Add(DiffuseBudget(hands, even));
        }

        double straight = FreeSpace(Console.DistanceTo(hands));
        double least = sum * LeastShare;
        foreach ((UprightMirror mirror, double leastDb) in mirrors.Uprights)
        {
            if (IsHidden(leastDb, straight, least))
            {
                break; // as the sum without its parts does, so that both are the same
            }

            if (Mirror.InUpright(mirror, Console, hands, wavelength, losses, out Reflection reflection))
            {
                MirrorPanel panel = mirror.PanelAt(reflection.Place);
                Add(
                    reflection,
                    mirror.IsFixture ? TurnKind.Fixture : TurnKind.Wall,
                    Scene.Names[panel.Name],
                    cells.LevelAt(Math.Clamp(reflection.Place.Z, panel.Low, panel.High)));
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
        int count = waysRound.To(hands, sum * LeastShare, buffer, ways);
        for (int i = 0; i < count; i++)
        {
            paths.Add(AroundBudget(ways[i], hands, facingDegrees, buffer));
        }

        return [.. paths.OrderBy(path => path.LossDb)];

        void Add(Reflection reflection, TurnKind kind, string name, int level)
        {
            double power = ReflectedPower(reflection, hands, facingDegrees, buffer, least);
            if (power > 0)
            {
                sum += power;
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

    // Mirrors come least hidden first, and no reflection is shorter than the straight line.
    private static bool IsHidden(double leastDb, double straight, double least) =>
        straight * Decibels.ToPowerRatio(-leastDb) < least;

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
        double power = FreeSpace(reflection.LengthMetres) * reflection.PowerRatio;
        if (power < least)
        {
            return 0;
        }

        power *= body.Factor(reflection.Image, hands, facingDegrees);
        if (power < least)
        {
            return 0;
        }

        double legsDb = BendGraph.LegDb(Scene, losses, reflection.Place.Towards(hands, ShortOfMirror), hands, buffer);
        if (power * Decibels.ToPowerRatio(-legsDb) * BesideLegs < least)
        {
            return 0;
        }

        legsDb += BendGraph.LegDb(Scene, losses, Console, Console.Towards(reflection.Place, 1 - ShortOfMirror), buffer);
        if (power * Decibels.ToPowerRatio(-legsDb) * BesideLegs < least)
        {
            return 0;
        }

        Scene.Gather(new Ray(Console, reflection.ImageOfEnd, wavelength, 0, reflection.Share), buffer, reflection.Mirror);
        power *= FrontSum.PowerRatio(buffer.Pieces, losses);
        if (power < least)
        {
            return 0;
        }

        Scene.Gather(new Ray(reflection.Image, hands, wavelength, reflection.Share), buffer, reflection.Mirror);
        return power * FrontSum.PowerRatio(buffer.Pieces, losses);
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

    private PathBudget AroundBudget(in WayRound way, Point3 hands, double? facingDegrees, TraceBuffer buffer)
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

        double factor = body.Factor(way.Place, hands, facingDegrees);
        var path = new Path(PathKind.Around, corners, way.Metres, crossings);
        return Itemised(
            path, ToLossDb(way.Power * factor), 0, -Decibels.FromPowerRatio(factor), waysRound.Turns(way), way.BendDb);
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
