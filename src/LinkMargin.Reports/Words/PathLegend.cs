using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Files.Json;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Reports.Words;

/// <summary>What the columns and lines of some ways mean; only those that occur.</summary>
/// <param name="paths">The ways that are taken apart.</param>
internal sealed class PathLegend(IReadOnlyList<PathBudget> paths)
{
    private IEnumerable<Crossing> Crossings => paths.SelectMany(path => path.Path.Crossings);

    /// <summary>All of it, each a paragraph.</summary>
    public IEnumerable<string> All
    {
        get
        {
            if (Crossings.Any() || paths.Any(path => path.Turns.Any(turn => turn.IncidenceDegrees is not null)))
            {
                yield return "Angle: between the path and the surface's normal; 0 is head on.";
            }

            if (Crossings.Any(PathTable.HasShare))
            {
                yield return "Share: of joists, how much of the path's width (first Fresnel zone) they cover; of solid things, the "
                    + "length inside them over the thickness their loss is stated for.";
            }

            if (Crossings.Any())
            {
                IEnumerable<LossBasis> used = paths.SelectMany(path => path.Bases).Distinct().Order();
                yield return $"Basis of a loss: {string.Join("; ", used.Select(basis => $"{CrossingDocument.WordFor(basis)}, {MeaningOf(basis)}"))}.";
            }

            if (paths.Any(path => path.EdgesDb < 0))
            {
                yield return "What passes beside them: a path is as wide as its first Fresnel zone, so some of it passes through openings "
                    + "and round ends and edges; that gives back part of what the obstacles on its line take.";
            }

            if (paths.Any(path => path.Path.Kind == PathKind.Diffuse))
            {
                yield return "Diffuse field: what fills a room after some bounces; it comes from everywhere and has no line of its own.";
            }
        }
    }

    private static string MeaningOf(LossBasis basis) => basis switch
    {
        LossBasis.Listed => "the table's loss at whichever angle",
        LossBasis.HeadOnAndLayers => "the table's loss head on, changed with the angle as its layers do",
        LossBasis.MeanAndLayers => "the table's loss as a mean over angles, changed with the angle as its layers do",
        LossBasis.Through => "what passes through the thing itself, since what goes round it is counted apart",
        LossBasis.JoistShare => "what comes through them and between them, by the share",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "This is not what a loss can rest on."),
    };
}
