using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Diffuse;

/// <summary>
/// What a console's direct energy and its first reflections leave behind in each cell: the power its diffuse field is fed
/// with. Rays go out evenly in all directions. Each surface on a ray's way throws back a share, which runs on as a
/// reflection of its own where the surface is a mirror (that reflection is a path) and is left in the cell where it is not;
/// whatever a reflection's own surfaces throw back is left in their cells. The rest is passed on, turned to heat, or gone.
/// </summary>
internal sealed class EnergySources
{
    /// <summary>Rays from one console: enough that one more doubling moves no cell's share by more than a few hundredths of it.</summary>
    internal const int Rays = 1024;

    private const double StepBackMetres = 0.05;
    private const double ClearMetres = 1e-5;

    private readonly Scene scene;
    private readonly LossTables losses;
    private readonly Cells cells;
    private readonly double[] left;
    private readonly double shiftDb;
    private readonly double[,]? changes; // of what is left, by material and cell
    private readonly List<(int Material, double Slope)> crossed = []; // by the ray so far, dB for each dB of the material
    private readonly double farMetres;
    private readonly LevelMirror ground;
    private readonly LevelMirror lid;
    private readonly TraceBuffer firstBuffer = new();
    private readonly TraceBuffer secondBuffer = new();

    private EnergySources(Scene scene, LossTables losses, Cells cells, double shiftDb)
    {
        this.scene = scene;
        this.losses = losses;
        this.cells = cells;
        this.shiftDb = shiftDb;
        left = new double[cells.Count];
        changes = shiftDb == 0 ? null : new double[scene.Materials.Count, cells.Count];
        ground = scene.Plates[0];
        lid = scene.Plates[^1];
        farMetres = scene.ReachMetres;
    }

    /// <summary>Power left in each cell, as a share of the power sent out.</summary>
    /// <param name="scene">The house.</param>
    /// <param name="losses">Its losses.</param>
    /// <param name="cells">Its cells.</param>
    /// <param name="console">Where the power comes from.</param>
    /// <param name="gone">Power turned to heat or gone out of doors; with what is left it makes 1.</param>
    internal static double[] Of(Scene scene, LossTables losses, Cells cells, Point3 console, out double gone)
    {
        var sources = new EnergySources(scene, losses, cells, 0);
        gone = sources.SendAll(console);
        return sources.left;
    }

    /// <summary>How much more is left in each cell where one material loses more; what surfaces throw back stays.</summary>
    /// <param name="scene">The house.</param>
    /// <param name="losses">Its losses.</param>
    /// <param name="cells">Its cells.</param>
    /// <param name="console">Where the power comes from.</param>
    /// <param name="moreDb">What one material in turn loses more than its table says, dB.</param>
    /// <returns>By material and cell, share of the power sent out.</returns>
    internal static double[,] Changes(Scene scene, LossTables losses, Cells cells, Point3 console, double moreDb)
    {
        var sources = new EnergySources(scene, losses, cells, moreDb);
        sources.SendAll(console);
        return sources.changes!;
    }

    private double SendAll(Point3 console)
    {
        double gone = 0;

        // A spiral of equal steps in height and the golden angle covers an eighth of the ways round the house's own
        // directions, and its mirror images the rest: even over the sphere, and the same for a turned or mirrored house.
        const int Images = 8;
        double turn = Math.PI * (3 - Math.Sqrt(5));
        for (int i = 0; i < Rays / Images; i++)
        {
            double up = 1 - (((2 * i) + 1) / (double)(Rays / Images));
            double aside = Math.Sqrt(1 - (up * up));
            double angle = i * turn % (2 * Math.PI) / Images;
            (double sin, double cos) = Math.SinCos(angle);
            foreach ((double along, double across) in new[]
            {
                (cos, sin), (-cos, sin), (cos, -sin), (-cos, -sin), (sin, cos), (-sin, cos), (sin, -cos), (-sin, -cos),
            })
            {
                Point2 way = scene.Frame.ToPlan(aside * along, aside * across);
                gone += Send(console, way.At(up), 1.0 / Rays, true);
            }
        }

        return gone;
    }

    // Follows one ray; returns the power that is neither left in a cell nor sent on.
    private double Send(Point3 from, Point3 way, double power, bool isFirst)
    {
        LevelMirror? end = null;
        double run = farMetres;
        LevelMirror cap = way.Z < 0 ? ground : lid;
        double toCap = (cap.Height - from.Z) / way.Z;
        if (way.Z != 0 && toCap > 0 && toCap < run)
        {
            run = toCap;
            end = cap;
        }

        TraceBuffer buffer = isFirst ? firstBuffer : secondBuffer;
        Point3 to = new(from.X + (run * way.X), from.Y + (run * way.Y), from.Z + (run * way.Z));
        scene.Trace(from, to, buffer, wholeFloors: true);
        double gone = 0, before = 0;
        int crossedBefore = crossed.Count;
        for (int i = 0; i < buffer.Count; i++)
        {
            Hit hit = buffer.Hits[i];
            double at = hit.Along * run;
            double passed = Decibels.ToPowerRatio(-losses.Db(hit));
            double thrownBack = hit.Kind == ObstacleKind.Joists
                ? 0
                : Math.Min(1 - passed, losses[hit.Material].Reflectance(hit.CosIncidence));
            gone += power * (1 - passed - thrownBack);
            gone += ThrowBack(from, to, way, at, before, run, power * thrownBack, hit.Mirror, hit.NormalX, hit.NormalY, isFirst);
            power *= passed;
            before = at;
            if (changes is not null)
            {
                crossed.Add((hit.Material, (losses.Db(hit, shiftDb) - losses.Db(hit)) / shiftDb));
            }
        }

        if (end is not null)
        {
            double thrownBack = losses[end.Material].Reflectance(Math.Abs(way.Z));
            gone += power * (1 - thrownBack);
            gone += ThrowBack(from, to, way, run, before, run, power * thrownBack, 0, 0, 0, isFirst);
        }
        else
        {
            gone += power;
        }

        crossed.RemoveRange(crossedBefore, crossed.Count - crossedBefore);
        return gone;
    }

    private double ThrowBack(
        Point3 from,
        Point3 to,
        Point3 way,
        double at,
        double before,
        double run,
        double power,
        int mirror,
        double normalX,
        double normalY,
        bool isFirst)
    {
        if (power == 0)
        {
            return 0;
        }

        if (isFirst && mirror >= 0)
        {
            Point3 place = from.Towards(to, at / run);
            double across = (way.X * normalX) + (way.Y * normalY);
            bool isLevel = normalX == 0 && normalY == 0;
            Point3 back = isLevel
                ? new Point3(way.X, way.Y, -way.Z)
                : new Point3(way.X - (2 * across * normalX), way.Y - (2 * across * normalY), way.Z);
            Point3 clear = new(
                place.X + (ClearMetres * back.X), place.Y + (ClearMetres * back.Y), place.Z + (ClearMetres * back.Z));
            return Send(clear, back, power, false);
        }

        double look = Math.Max((at + before) / 2, at - StepBackMetres);
        int cell = cells.At(from.Towards(to, look / run));
        if (cell == Cells.Outdoors)
        {
            return power;
        }

        left[cell] += power;
        if (changes is not null)
        {
            AddChanges(changes, cell, power);
        }

        return 0;
    }

    // What the ray leaves here is less by what it has crossed of each material so far.
    private void AddChanges(double[,] to, int cell, double power)
    {
        for (int i = 0; i < crossed.Count; i++)
        {
            int material = crossed[i].Material;
            double slope = 0;
            bool isFirst = true;
            for (int j = 0; j < crossed.Count; j++)
            {
                if (crossed[j].Material == material)
                {
                    isFirst &= j >= i;
                    slope += crossed[j].Slope;
                }
            }

            if (isFirst)
            {
                to[material, cell] += power * (Decibels.ToPowerRatio(-slope * shiftDb) - 1);
            }
        }
    }
}
