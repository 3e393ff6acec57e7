using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Cli.Output;

/// <summary>One line of a path's sum.</summary>
/// <param name="What">What takes or gives, in words.</param>
/// <param name="LossDb">How much, dB; below 0 where it helps.</param>
internal sealed record PathPart(string What, double LossDb)
{
    // Less than this is nothing but rounding.
    private const double NothingDb = 1e-6;

    /// <summary>The obstacle, where it is one.</summary>
    public Crossing? Crossing { get; init; }

    /// <summary>How the obstacle's loss came about.</summary>
    public LossBasis? Basis { get; init; }

    /// <summary>The turn, where it is one.</summary>
    public PathTurn? Turn { get; init; }

    /// <summary>All parts of a path, those with a place in their order from the spot; they add up to its loss.</summary>
    public static PathPart[] Of(PathBudget path, House house, LengthFormat lengths)
    {
        PathPart?[] last =
        [
            Part(path.EdgesDb < 0 ? "what passes beside them" : "obstacles beside the line", path.EdgesDb),
            Part("from the console into the diffuse field", path.DiffuseDb),
            Part("the player's own body", path.BodyDb),
        ];
        return
        [
            .. path.Path.Kind == PathKind.Diffuse
                ? Array.Empty<PathPart>()
                : [new($"free space over {lengths.Brief(path.Path.LengthMetres)}", path.FreeSpaceDb)],
            .. Placed(path, house).OrderBy(part => part.Crossing?.DistanceMetres ?? part.Turn!.DistanceMetres),
            .. last.OfType<PathPart>(),
        ];
    }

    // What a way loses by its turns is one figure; it stands with the first of them.
    private static IEnumerable<PathPart> Placed(PathBudget path, House house)
    {
        for (int i = 0; i < path.CrossingsDb.Count; i++)
        {
            Crossing crossing = path.Path.Crossings[i];
            yield return new PathPart(PathWords.Of(crossing, house), path.CrossingsDb[i]) { Crossing = crossing, Basis = path.Bases[i] };
        }

        if (path.Turns.Count > 0)
        {
            string what = path.Path.Kind == PathKind.Reflected ? "thrown back" : path.Turns.Count == 1 ? "bent round the edge" : "bent round the edges";
            yield return new PathPart(what, path.ReflectionDb + path.DiffractionDb) { Turn = path.Turns[0] };
        }
    }

    private static PathPart? Part(string what, double lossDb) => Math.Abs(lossDb) < NothingDb ? null : new(what, lossDb);
}
