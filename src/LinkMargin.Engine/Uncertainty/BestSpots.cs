using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// How likely each of some spots is the best one, whose weakest seat has the greatest headroom, over all houses that the file could
/// describe.
/// <para>
/// In one drawn house what the model leaves out is normal and independent for each link. So the weakest seat of a spot has more
/// headroom than h with probability Π Φ((headroom of a seat − h)/spread), over its seats, and the spot is the best one with
/// probability ∫ Π F_other(h) dF(h). That is summed over a uniform grid of h and averaged over the draws. In each draw the
/// radios' shifts are the same for all spots.
/// </para>
/// </summary>
internal static class BestSpots
{
    private const int Steps = 96;

    /// <summary>Beyond this many spreads only 1e-9 of a normal distribution is left.</summary>
    private const double SpreadsAway = 6;

    /// <summary>How likely each is the best, 0 to 1; together 1.</summary>
    internal static IReadOnlyList<double> Probabilities(HouseUncertainty uncertainty, IReadOnlyList<SpotScore> spots)
    {
        Seat[][] seats = [.. spots.Select(spot => spot.Budgets.Select(budget => new Seat(uncertainty.With(budget), budget)).ToArray())];
        double[] likely = new double[spots.Count];
        double[] below = new double[spots.Count], before = new double[spots.Count];
        for (int d = 0; d < uncertainty.Draws; d++)
        {
            // The best headroom of a weakest seat is hardly ever farther than this from its value without what the model leaves out.
            double middle = seats.Max(some => some.Min(seat => seat.HeadroomDb(d)));
            double reach = SpreadsAway * seats.Max(some => some.Max(seat => seat.Drawn.ResidualDb));
            Array.Clear(before);
            for (int k = 0; k <= Steps; k++)
            {
                double at = middle - reach + (2 * reach * k / Steps);
                for (int s = 0; s < below.Length; s++)
                {
                    below[s] = k == Steps ? 1 : 1 - AllAbove(seats[s], at, d);
                }

                AddStep(likely, before, below);
                (before, below) = (below, before);
            }
        }

        double whole = likely.Sum();
        return [.. likely.Select(sum => sum / whole)];
    }

    private static double AllAbove(Seat[] seats, double headroomDb, int draw)
    {
        double all = 1;
        foreach (Seat seat in seats)
        {
            all *= seat.Drawn.ProbabilityOf(seat.RequiredDb + headroomDb, draw);
        }

        return all;
    }

    // Within a step each spot's distribution is taken as linear, so of two spots in one step each is ahead half the time.
    private static void AddStep(double[] likely, double[] before, double[] below)
    {
        for (int s = 0; s < likely.Length; s++)
        {
            double others = 1;
            for (int t = 0; t < likely.Length; t++)
            {
                others *= t == s ? 1 : (before[t] + below[t]) / 2;
            }

            likely[s] += (below[s] - before[s]) * others;
        }
    }

    private sealed record Seat(DrawnMargins Drawn, LinkBudget Budget)
    {
        internal double RequiredDb { get; } = Budget.RequiredDb;

        internal double HeadroomDb(int draw) => Drawn.InDrawDb(draw) - RequiredDb;
    }
}

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

    /// <summary>Compares the spots of a ranking.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="ranking">Its spots, best first; at least one.</param>
    /// <param name="uncertainty">The uncertainty of its links.</param>
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
