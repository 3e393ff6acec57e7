using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Levels;

/// <summary>Computes the elevation of each level.</summary>
internal static class LevelStack
{
    /// <summary>
    /// Each level's floor above the lowest level's, metres. A level without an elevation lies on the build-up of the one
    /// below; a given elevation is checked against it.
    /// </summary>
    public static IReadOnlyList<double> Elevations(IReadOnlyList<LevelDraft> levels, Source source)
    {
        double[] floors = new double[levels.Count];

        // False after a level whose height or build-up could not be read, until a level gives its elevation.
        bool isKnown = levels.Count > 0 && !levels[0].IsElevationUnread;
        double datum = levels.Count > 0 ? levels[0].ElevationMetres ?? 0 : 0;
        for (int i = 1; i < levels.Count; i++)
        {
            (LevelDraft below, LevelDraft level) = (levels[i - 1], levels[i]);
            double ceiling = floors[i - 1] + (below.HeightMetres ?? 0);
            double? thickness = below.Above?.BuildUp.ThicknessMetres;
            floors[i] = level.ElevationMetres is { } given ? given - datum : ceiling + (thickness ?? 0);
            if (level.ElevationMetres is not null && isKnown && below.HeightMetres is not null)
            {
                Compare(below, level, floors[i] - ceiling, thickness, source);
            }

            isKnown = level.ElevationMetres is not null
                ? !levels[0].IsElevationUnread
                : isKnown && !level.IsElevationUnread && below.HeightMetres is not null && thickness is not null;
        }

        return floors;
    }

    private static void Compare(LevelDraft below, LevelDraft level, double gap, double? thickness, Source source)
    {
        if (gap < -HouseLimits.SameHeight)
        {
            source.Error(level.ElevationMark, 
                $"the level {Quote.Of(level.Name)} begins {source.Lengths.Exact(-gap)} below the ceiling of {Quote.Of(below.Name)}; "
                    + "levels are written lowest first and may not overlap, so fix 'elevation' or the height below");
        }
        else if (thickness is { } built && Math.Abs(gap - built) > HouseLimits.FloorGapTolerance)
        {
            source.Warning(level.ElevationMark, 
                $"there is {source.Lengths.Exact(Math.Max(gap, 0))} between the ceiling of {Quote.Of(below.Name)} and the floor of {Quote.Of(level.Name)}, but the build-up is {source.Lengths.Exact(built)} thick; check 'elevation', 'height' and 'build-up'");
        }
    }
}
