using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// Whether the first spot of a ranking can be distinguished from the others. It cannot from any that is more than half as likely to be
/// the best one: whoever bets on the first then has odds below two to one.
/// </summary>
/// <param name="Ranking">The ranking.</param>
/// <param name="ProbabilitiesBest">How likely each spot is the best one, in the ranking's order, 0 to 1.</param>
/// <param name="Rivals">The spots that are too close to the first to call, in the ranking's order; empty where the call is clear.</param>
/// <param name="Settling">The measurement that would tell most about which of them is better; null where the call is clear.</param>
public sealed record CloseCall(Ranking Ranking, IReadOnlyList<double> ProbabilitiesBest, IReadOnlyList<SpotScore> Rivals, NextMeasurement? Settling)
{
    private const double CloseShare = 0.5;

    /// <summary>Looks.</summary>
    /// <param name="model">The house, ready.</param>
    /// <param name="ranking">Its spots, best first; at least one.</param>
    /// <param name="uncertainty">How sure its links are.</param>
    /// <param name="basis">How uncertain the figures are.</param>
    public static CloseCall Of(LinkModel model, Ranking ranking, HouseUncertainty uncertainty, UncertaintyBasis basis)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        ArgumentNullException.ThrowIfNull(uncertainty);
        IReadOnlyList<double> best = uncertainty.ProbabilitiesBest(ranking.Scores);
        SpotScore[] rivals = [.. ranking.Scores.Where((_, i) => i > 0 && best[i] > CloseShare * best[0])];
        return new CloseCall(ranking, best, rivals, rivals.Length == 0 ? null : NextMeasurements.Settling(model, [ranking.Scores[0], .. rivals], basis));
    }

    /// <summary>How likely a spot of the ranking is the best one, 0 to 1.</summary>
    public double ProbabilityBest(SpotScore score) => ProbabilitiesBest[Ranking.Scores.ToList().IndexOf(score)];
}
