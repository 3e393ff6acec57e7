using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>Which part of a house is made of something.</summary>
public enum FabricPart
{
    /// <summary>Walls, without what closes their openings.</summary>
    Walls,

    /// <summary>What closes openings: doors and windows.</summary>
    Openings,

    /// <summary>Fixtures, with the panels of shells.</summary>
    Fixtures,
}

/// <summary>Walls, openings or fixtures of one row of the material table made of another row.</summary>
/// <param name="Part">Which part of the house.</param>
/// <param name="Name">The name of the one wall, opening or fixture; null for all of the row.</param>
/// <param name="LevelIndex">The level it is on; null for every level.</param>
/// <param name="Row">The row that is replaced.</param>
/// <param name="With">What takes its place.</param>
public sealed record SwapMaterial(FabricPart Part, string? Name, int? LevelIndex, string Row, Material With) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return Part switch
        {
            FabricPart.Walls => WithWalls(house, LevelIndex, wall => IsMeant(wall.Name, wall.Material), wall => wall with { Material = With }, What),
            FabricPart.Openings => WithWalls(
                house,
                LevelIndex,
                wall => wall.Openings.Any(IsMeant),
                wall => wall with { Openings = [.. wall.Openings.Select(opening => IsMeant(opening) ? opening with { Leaf = With } : opening)] },
                What),
            FabricPart.Fixtures => house with { Fixtures = Changed(house.Fixtures, IsMeant, Swapped, What) },
            _ => throw new ArgumentOutOfRangeException(nameof(house), Part, "Not a known part of a house."),
        };
    }

    private string What => $"{Part} of '{Row}'{(Name is null ? "" : $" called '{Name}'")}";

    private bool IsMeant(string name, Material material) => (Name is null || Name == name) && material.Name == Row;

    private bool IsMeant(Opening opening) => opening.Leaf is { } leaf && IsMeant(opening.Name, leaf);

    private bool IsMeant(Fixture fixture) =>
        (LevelIndex is null || fixture.LevelIndex == LevelIndex)
        && (IsMeant(fixture.Name, fixture.Material) || fixture.SideMaterials.Values.Any(panel => IsMeant(fixture.Name, panel)));

    private Fixture Swapped(Fixture fixture) => fixture with
    {
        Material = Of(fixture.Material),
        SideMaterials = fixture.SideMaterials.ToDictionary(side => side.Key, side => Of(side.Value)),
    };

    private Material Of(Material material) => material.Name == Row ? With : material;
}

/// <summary>
/// Another build-up for the floor above a level. Levels that rest on the build-ups below them move up or down with its thickness,
/// as they do when the house file is read; a level whose elevation the file states may be elsewhere and stays.
/// </summary>
/// <param name="LevelIndex">The level below the floor; 0 is the lowest.</param>
/// <param name="With">The new build-up.</param>
public sealed record SwapBuildUp(int LevelIndex, FloorBuildUp With) : HouseEdit
{
    // Two elevations closer than this are equal: far below what people write, far above rounding.
    private const double SameMetres = 1e-9;

    /// <inheritdoc/>
    public override House ApplyTo(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(With);
        if (LevelIndex < 0 || LevelIndex >= house.Levels.Count || house.Levels[LevelIndex].Above is not { } above)
        {
            throw new ArgumentException($"The house has no floor above level {LevelIndex}.", nameof(house));
        }

        Level[] levels = [.. house.Levels];
        levels[LevelIndex] = levels[LevelIndex] with { Above = above with { BuildUp = With } };
        for (int i = LevelIndex + 1; i < levels.Length; i++)
        {
            Level before = house.Levels[i - 1], below = levels[i - 1];
            if (before.Above is not { } floor || Math.Abs(house.Levels[i].ElevationMetres - before.CeilingMetres - floor.BuildUp.ThicknessMetres) > SameMetres)
            {
                break;
            }

            levels[i] = levels[i] with { ElevationMetres = below.CeilingMetres + below.Above!.BuildUp.ThicknessMetres };
        }

        return house with { Levels = levels };
    }
}
