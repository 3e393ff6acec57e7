using LinkMargin.Engine.Links;

namespace LinkMargin.Cli.Output;

/// <summary>One line of a path's sum.</summary>
/// <param name="What">What takes or gives, in words.</param>
/// <param name="LossDb">How much, dB; below 0 where it helps.</param>
/// <param name="Crossing">The obstacle, where it is one.</param>
internal sealed record PathPart(string What, double LossDb, Crossing? Crossing = null)
{
    // Less than this is nothing but rounding.
    private const double NothingDb = 1e-6;

    /// <summary>All parts of a path; they add up to its loss.</summary>
    public static PathPart[] Of(PathBudget path, LengthWords lengths)
    {
        PathPart?[] parts =
        [
            path.Path.Kind == PathKind.Diffuse ? null : new($"free space over {lengths.Brief(path.Path.LengthMetres)}", path.FreeSpaceDb),
            .. path.Path.Crossings.Zip(path.CrossingsDb, (crossing, lossDb) =>
                new PathPart($"{Files.Json.CrossingDocument.WordFor(crossing.Kind)} {crossing.Name}", lossDb, crossing)),
            Part("beside the obstacles: openings, ends, edges", path.EdgesDb),
            Part("not thrown back", path.ReflectionDb),
            Part("bending round edges", path.BendingDb),
            Part("into the even field of the room", path.DiffuseDb),
            Part("the player's body", path.BodyDb),
        ];
        return [.. parts.OfType<PathPart>()];
    }

    /// <summary>Where the energy goes, in words.</summary>
    public static string WayOf(PathBudget path) => path.Path.Kind switch
    {
        PathKind.Direct => "straight line",
        PathKind.Reflected => $"thrown back by {path.By}",
        PathKind.Around => $"round {path.By}",
        PathKind.Diffuse => "diffuse field of the room",
        _ => throw new ArgumentOutOfRangeException(nameof(path), path.Path.Kind, "This is not a kind of path."),
    };

    private static PathPart? Part(string what, double lossDb) => Math.Abs(lossDb) < NothingDb ? null : new(what, lossDb);
}
