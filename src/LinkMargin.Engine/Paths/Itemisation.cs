using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths;

/// <summary>Turns what the tracer finds into the crossings and budgets that people read.</summary>
internal static class Itemisation
{
    /// <summary>What a straight line crosses, in order.</summary>
    internal static Crossing[] Crossings(Scene scene, Point3 from, Point3 to, TraceBuffer buffer, bool wholeFloors, double offsetMetres = 0)
    {
        scene.Trace(from, to, buffer, wholeFloors);
        double length = from.DistanceTo(to);
        var crossings = new Crossing[buffer.Count];
        for (int i = 0; i < crossings.Length; i++)
        {
            Hit hit = buffer.Hits[i];
            crossings[i] = new Crossing(
                hit.Kind,
                scene.Names[hit.Name],
                scene.Materials[hit.Material],
                hit.Level,
                double.RadiansToDegrees(Math.Acos(hit.CosIncidence)),
                hit.Share,
                offsetMetres + (hit.Along * length));
        }

        return crossings;
    }

    /// <summary>The budget of a path made of straight lines. The remainder of its loss is diffraction at obstacles beside the path.</summary>
    /// <param name="house">The house.</param>
    /// <param name="path">The path.</param>
    /// <param name="lossDb">Its total loss, dB.</param>
    /// <param name="items">The items of its kind: reflection, diffraction, body; where it turns.</param>
    internal static PathBudget Budget(TracedHouse house, TracedPath path, double lossDb, PathItems items)
    {
        double freeSpaceDb = FreeSpaceLoss.Db(path.LengthMetres, house.Scene.Band.Equivalent);
        double[] crossingsDb = [.. path.Crossings.Select(c => CrossingLoss.Db(c.Kind, c.Share, TableOf(c).LossDb(CosineOf(c))))];
        IEnumerable<string?> cautions = path.Crossings.Select(c => CautionAbout($"'{c.Name}'", TableOf(c).CautionAt(CosineOf(c))))
            .Append(items.Caution)
            .Append(FreeSpaceLoss.CautionAt(path.LengthMetres, house.Scene.Band.Equivalent));
        return new PathBudget(path, freeSpaceDb, crossingsDb, lossDb)
        {
            EdgesDb = lossDb - freeSpaceDb - crossingsDb.Sum() - items.ReflectionDb - items.DiffractionDb - items.SurfacesDb - items.BodyDb,
            DiffractionDb = items.DiffractionDb,
            ReflectionDb = items.ReflectionDb,
            SurfacesDb = items.SurfacesDb,
            BodyDb = items.BodyDb,
            Turns = items.Turns,
            Cautions = [.. cautions.OfType<string>().Distinct()],
            Bases = [.. path.Crossings.Select(c => c.Kind == ObstacleKind.Joists ? LossBasis.JoistShare : TableOf(c).Basis)],
        };

        AngleTable TableOf(Crossing crossing) => house.Losses[house.Scene.NumberOf(crossing.Material)];
    }

    /// <summary>A caution with the name of the thing it is about.</summary>
    internal static string? CautionAbout(string name, string? caution) => caution is null ? null : $"{name} is {caution}";

    // The loss of ribs is that of a member's whole depth, whatever the angle.
    private static double CosineOf(Crossing crossing) =>
        crossing.Kind == ObstacleKind.Joists ? 1 : Math.Cos(double.DegreesToRadians(crossing.IncidenceDegrees));
}

/// <summary>The items of a path's budget that depend on its kind.</summary>
internal sealed record PathItems
{
    /// <summary>Loss at the reflection, dB.</summary>
    internal double ReflectionDb { get; init; }

    /// <summary>Loss by diffraction at edges, dB.</summary>
    internal double DiffractionDb { get; init; }

    /// <summary>Loss by interference of a surface's reflection with the straight line along it, dB.</summary>
    internal double SurfacesDb { get; init; }

    /// <summary>Loss by the player's own body, dB.</summary>
    internal double BodyDb { get; init; }

    /// <summary>Where it leaves its straight line.</summary>
    internal IReadOnlyList<PathTurn> Turns { get; init; } = [];

    /// <summary>A formula that is used outside its range; null for none.</summary>
    internal string? Caution { get; init; }
}
