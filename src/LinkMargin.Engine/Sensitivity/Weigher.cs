using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Sensitivity;

/// <summary>How much an assumption matters: first by whether it changes the decision, then by how far it moves the figures behind it.</summary>
/// <param name="Decision">2 if another spot becomes best, 1 if a seat of the best spot passes no longer or passes now, else 0.</param>
/// <param name="Db">The greatest change, dB.</param>
internal readonly record struct Weight(int Decision, double Db) : IComparable<Weight>
{
    /// <inheritdoc/>
    public int CompareTo(Weight other) => (Decision, Db).CompareTo((other.Decision, other.Db));
}

/// <summary>Weighs assumptions, for the decision or for one link.</summary>
internal sealed class Weigher(SensitivityBase before, LinkBudget? focus)
{
    private readonly SpotScore best = before.Ranking.Scores[0];

    internal Weight EstimateOf(Unknown unknown) => unknown.Alternatives.Select(alternative => Of(
            link => before.Uncertainty.MarginAtConfidenceDb(link) + unknown.EstimateDb(link, alternative.LossDb)))
        .DefaultIfEmpty().Max();

    internal Weight Of(UnknownEffect effect) => effect.Alternatives.Select(alternative => Of(alternative.MarginDb)).DefaultIfEmpty().Max();

    private Weight Of(Func<LinkBudget, double> marginDb)
    {
        if (focus is not null)
        {
            double after = marginDb(focus), was = before.Uncertainty.MarginAtConfidenceDb(focus);
            return new(after >= focus.RequiredDb != was >= focus.RequiredDb ? 1 : 0, Math.Abs(after - was));
        }

        double[] weakest = [.. before.Ranking.Scores.Select(score => score.Budgets.Min(link => marginDb(link) - link.RequiredDb))];
        double ownDb = Math.Abs(weakest[0] - best.WeakestHeadroomDb);
        bool isOther = weakest.Skip(1).Any(other => other > weakest[0]);
        bool passesOtherwise = best.Budgets.Any(link => marginDb(link) >= link.RequiredDb != best.By.Passes(link));
        double leadDb = before.Ranking.Scores.Count < 2 ? 0 : Math.Abs(weakest[0] - weakest.Skip(1).Max() - (best.WeakestHeadroomDb - before.Ranking.Scores[1].WeakestHeadroomDb));
        return new(isOther ? 2 : passesOtherwise ? 1 : 0, Math.Max(ownDb, leadDb));
    }
}
