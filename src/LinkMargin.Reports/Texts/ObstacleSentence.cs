using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>What stands between a spot and a seat, in one sentence.</summary>
internal static class ObstacleSentence
{
    // The others are summed up.
    private const int MostNamed = 4;

    // A smaller loss is not worth a word.
    private const double LeastDb = 0.05;

    /// <summary>
    /// The obstacles on the straight line, greatest loss first, all layers of a floor as one; empty if the straight line is not among the
    /// link's paths.
    /// </summary>
    public static string Of(LinkBudget budget, LoadedHouse loaded)
    {
        ArgumentNullException.ThrowIfNull(budget);
        ArgumentNullException.ThrowIfNull(loaded);
        if (budget.Paths.FirstOrDefault(path => path.Path.Kind == PathKind.Direct) is not { } direct)
        {
            return "";
        }

        (string What, double LossDb)[] obstacles =
        [
            .. PathPart.Of(direct, loaded.House, loaded.Lengths)
                .Where(part => part.Crossing is not null)
                .GroupBy(part => NameOf(part, loaded))
                .Select(parts => (What: parts.Key, LossDb: parts.Sum(part => part.LossDb)))
                .Where(obstacle => obstacle.LossDb >= LeastDb)
                .OrderByDescending(obstacle => obstacle.LossDb),
        ];
        if (obstacles.Length == 0)
        {
            return "Nothing stands on the straight line.";
        }

        (string What, double LossDb)[] rest = [.. obstacles.Skip(MostNamed)];
        return $"On the straight line: {string.Join(", ", obstacles.Take(MostNamed).Select(one => $"{one.What} {Tenths.Show(Tenths.Of(one.LossDb))} dB"))}"
            + (rest.Length == 0 ? "." : FormattableString.Invariant($", and {rest.Length} more with {Tenths.Show(Tenths.Of(rest.Sum(one => one.LossDb)))} dB together."));
    }

    private static string NameOf(PathPart part, LoadedHouse loaded)
    {
        Crossing crossing = part.Crossing!;
        return crossing.Kind is ObstacleKind.FloorLayer or ObstacleKind.Joists
            ? $"floor above {loaded.House.Levels[crossing.LevelIndex].Name}"
            : $"{part.What} ({PathWords.NameOf(crossing.Material, loaded.Lengths)})";
    }
}
