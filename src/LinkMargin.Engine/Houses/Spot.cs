using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>A candidate place for a console.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan its radio is: in the console, or on a lead.</param>
/// <param name="HeightMetres">The radio's height above the level's floor, metres.</param>
public sealed record Spot(string Name, int LevelIndex, Point2 Plan, double HeightMetres)
{
    /// <summary>The lead its radio is on; null where the radio is in the console.</summary>
    public SpotLead? Lead { get; init; }

    /// <summary>The radio of the console that would stand here; null for the house's.</summary>
    public Radio? Radio { get; init; }
}

/// <summary>A lead from a console to its radio, on the same level.</summary>
/// <param name="LengthMetres">Its length, metres.</param>
/// <param name="ConsolePlan">Where on the plan the console stands.</param>
/// <param name="ConsoleHeightMetres">The console's height above the level's floor, metres.</param>
public sealed record SpotLead(double LengthMetres, Point2 ConsolePlan, double ConsoleHeightMetres);
