using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;

namespace LinkMargin.Reports.Houses;

/// <summary>The cable runs of ranked spots.</summary>
internal static class RankedRuns
{
    /// <summary>The runs of each spot, in the order of the ranking; empty if the house file has no displays.</summary>
    public static SpotRuns[] Of(House house, Ranking ranking)
    {
        if (house.Cabling.Displays.Count == 0)
        {
            return [];
        }

        var planner = new RunPlanner(house);
        return [.. ranking.Scores.Select(score => planner.Plan(score.Spot))];
    }
}
