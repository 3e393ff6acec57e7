using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Files.Json;

namespace LinkMargin.Reports.Texts;

/// <summary>The meaning of columns and lines for some paths; only those that occur.</summary>
/// <param name="paths">The paths shown in detail.</param>
internal sealed class PathLegend(IReadOnlyList<PathBudget> paths)
{
    private IEnumerable<Crossing> Crossings => paths.SelectMany(path => path.Path.Crossings);

    /// <summary>The whole legend, one paragraph each.</summary>
    public IEnumerable<string> All
    {
        get
        {
            if (Crossings.Any() || paths.Any(path => path.Turns.Any(turn => turn.IncidenceDegrees is not null)))
            {
                yield return "Angle: between the path and the surface normal; 0 = head-on.";
            }

            if (Crossings.Any(PathTable.HasShare))
            {
                yield return "Share: for joists, the part of the first Fresnel zone they cover; for solid objects, the length inside "
                    + "divided by the thickness the loss is stated for.";
            }

            if (Crossings.Any())
            {
                IEnumerable<LossBasis> used = paths.SelectMany(path => path.Bases).Distinct().Order();
                yield return $"Basis of a loss: {string.Join("; ", used.Select(basis => $"{CrossingDocument.WordFor(basis)}, {MeaningOf(basis)}"))}.";
            }

            if (paths.Any(path => path.EdgesDb < 0))
            {
                yield return "Diffraction around these obstacles: a path is as wide as its first Fresnel zone, so part of it passes through "
                    + "openings and past edges. That reduces the loss of the obstacles on its line.";
            }

            if (paths.Any(path => PathPart.IsShown(path.SurfacesDb)))
            {
                yield return "Interference along a surface: where the direct path runs along a wall, floor or ceiling, its reflection there "
                    + "arrives almost in phase or in antiphase. The gain or loss that results is divided between both paths.";
            }

            if (paths.Any(path => path.Path.Kind == PathKind.Diffuse))
            {
                yield return "Diffuse field: energy that fills a room after several reflections and arrives from all directions.";
            }
        }
    }

    private static string MeaningOf(LossBasis basis) => basis switch
    {
        LossBasis.Listed => "table loss at every angle",
        LossBasis.HeadOnAndLayers => "table loss head-on; the layers give the change with angle",
        LossBasis.MeanAndLayers => "table loss as a mean over angles; the layers give the change with angle",
        LossBasis.Through => "loss through the object itself; paths around it are counted separately",
        LossBasis.JoistShare => "transmission through and between the joists, by the share",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "This is not what a loss can rest on."),
    };
}
