using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Sensitivity;

/// <summary>What kind of thing an assumption is about.</summary>
public enum UnknownKind
{
    /// <summary>What walls are made of.</summary>
    Walls,

    /// <summary>What doors and windows are made of.</summary>
    Openings,

    /// <summary>What fixtures are made of.</summary>
    Fixtures,

    /// <summary>What a floor is built of.</summary>
    Floor,

    /// <summary>Whether a door that the house file leaves open stays open.</summary>
    DoorState,
}

/// <summary>One assumption of a house file that may be wrong, with what could be true instead.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Name">The wall, opening or fixture it is about; null for all of one table row. Of a floor, the level below.</param>
/// <param name="LevelIndex">The level it is on; null for every level. Of a floor, the level below.</param>
/// <param name="Assumed">The table row that the house file names; of a door, <c>open</c>.</param>
/// <param name="Alternatives">What could be true instead: the one with the least loss and the one with the most, where they differ.</param>
public sealed record Unknown(UnknownKind Kind, string? Name, int? LevelIndex, string Assumed, IReadOnlyList<Alternative> Alternatives)
{
    /// <summary>A door left open, and one that is shut.</summary>
    public const string Open = "open", Shut = "shut";

    /// <summary>The rows of the material table whose spread says how uncertain it is even if the row is right.</summary>
    internal IReadOnlyList<string> Rows { get; init; } = [];

    /// <summary>
    /// A first estimate of how a link's margin changes if the losses of what it is about change by an amount, dB: from the
    /// crossings listed in the budget, each path by its share of the power. It only decides what is worth recomputing.
    /// </summary>
    internal double EstimateDb(LinkBudget budget, double lossDb)
    {
        double power = 0;
        foreach (PathBudget path in budget.Paths)
        {
            double crossed = path.Path.Crossings.Where(IsAbout).Sum(crossing => crossing.Share);
            power += budget.ShareOf(path) * Decibels.ToPowerRatio(-crossed * lossDb);
        }

        return Decibels.FromPowerRatio(power);
    }

    private bool IsAbout(Crossing crossing) =>
        crossing.Kind == (Kind switch
        {
            UnknownKind.Walls => ObstacleKind.Wall,
            UnknownKind.Openings => ObstacleKind.Opening,
            _ => ObstacleKind.Fixture,
        })
        && crossing.Material.TableRow == Assumed
        && (Name is null || crossing.Name == Name)
        && (LevelIndex is null || crossing.LevelIndex == LevelIndex);
}

/// <summary>What could be true in place of an assumption.</summary>
/// <param name="Row">The table row; of a door, <c>shut</c>.</param>
/// <param name="LossDb">How much more it loses than what is assumed, by the tables, dB.</param>
/// <param name="Edit">The change of the house.</param>
public sealed record Alternative(string Row, double LossDb, HouseEdit Edit);

/// <summary>Which rows of the tables could be meant where a house file names one: things that look alike.</summary>
/// <param name="MaterialsLike">Rows that could stand for a material; without itself.</param>
/// <param name="BuildUpsLike">Rows that could stand for a floor build-up; without itself.</param>
public sealed record PlausibleRows(
    Func<Material, IReadOnlyList<Material>> MaterialsLike, Func<FloorBuildUp, IReadOnlyList<FloorBuildUp>> BuildUpsLike);
