using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;

namespace LinkMargin.Files.Json;

/// <summary>One path of a link, as JSON.</summary>
/// <param name="Kind"><c>direct</c>, <c>reflected</c>, <c>around</c> or <c>diffuse</c>.</param>
/// <param name="Turns">What threw it back or what it went round, in order from the spot.</param>
/// <param name="LengthM">Its length, metres.</param>
/// <param name="Share">Its share of the power that arrives, 0 to 1.</param>
/// <param name="FreeSpaceDb">Free-space loss over its length, dB.</param>
/// <param name="EdgesDb">What passes beside the obstacles on or near the line, dB; below 0 where it helps.</param>
/// <param name="ReflectionDb">What a mirror does not throw back, dB.</param>
/// <param name="DiffractionDb">What bending round edges costs, dB.</param>
/// <param name="DiffuseDb">From the console's power to that of an even field where the player sits, dB.</param>
/// <param name="BodyDb">What the player's own body takes, dB.</param>
/// <param name="LossDb">All of it and the crossings together, dB.</param>
/// <param name="Crossings">What it meets, in order from the spot.</param>
public sealed record PathDocument(
    string Kind,
    IReadOnlyList<TurnDocument> Turns,
    double LengthM,
    double Share,
    double FreeSpaceDb,
    double EdgesDb,
    double ReflectionDb,
    double DiffractionDb,
    double DiffuseDb,
    double BodyDb,
    double LossDb,
    IReadOnlyList<CrossingDocument> Crossings)
{
    /// <summary>One sentence for each formula that is used outside the range it was published for.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>The word for a kind of path.</summary>
    public static string WordFor(PathKind kind) => kind switch
    {
        PathKind.Direct => "direct",
        PathKind.Reflected => "reflected",
        PathKind.Around => "around",
        PathKind.Diffuse => "diffuse",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This is not a kind of path."),
    };

    internal static PathDocument Of(House house, LinkBudget link, PathBudget budget) => new(
        WordFor(budget.Path.Kind),
        [.. budget.Turns.Select(turn => TurnDocument.Of(house, turn))],
        budget.Path.LengthMetres,
        link.ShareOf(budget),
        budget.FreeSpaceDb,
        Unsigned(budget.EdgesDb),
        Unsigned(budget.ReflectionDb),
        Unsigned(budget.DiffractionDb),
        Unsigned(budget.DiffuseDb),
        Unsigned(budget.BodyDb),
        budget.LossDb,
        [
            .. budget.Path.Crossings.Zip(budget.CrossingsDb, budget.Bases)
                .Select(item => CrossingDocument.Of(house, item.First, item.Second, item.Third)),
        ])
    {
        Cautions = budget.Cautions,
    };

    // A loss of nothing comes out of a logarithm as -0, which JSON would show.
    private static double Unsigned(double db) => db == 0 ? 0 : db;
}
