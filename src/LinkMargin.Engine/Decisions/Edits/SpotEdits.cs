using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>A spot moved.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is then on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">Above that level's floor, metres.</param>
public sealed record MoveSpot(string Name, int LevelIndex, Point2 Plan, double HeightMetres) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => house with
    {
        Spots = Changed(
            house.Spots,
            spot => spot.Name == Name,
            spot => spot with { LevelIndex = LevelIndex, Plan = Plan, HeightMetres = HeightMetres, Lead = null },
            $"spot '{Name}'"),
    };
}
