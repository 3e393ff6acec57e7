using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>How sure the margins of a house's links are, all in the same drawn houses.</summary>
public sealed class HouseUncertainty
{
    private readonly Dictionary<(string Spot, string Seat), (DrawnMargins Drawn, double MarginAtConfidenceDb)> links = [];

    private HouseUncertainty(double confidence, int draws) => (Confidence, Draws) = (confidence, draws);

    /// <summary>How often a margin that is counted on is exceeded, 0 to 1.</summary>
    public double Confidence { get; }

    /// <summary>How many houses were drawn.</summary>
    public int Draws { get; }

    /// <summary>The margin to count on, for whatever ranks or judges.</summary>
    public DecisionMargin AtConfidence => new("margin to count on", MarginAtConfidenceDb);

    /// <summary>Draws a house, and works every seat with every spot out in each draw.</summary>
    /// <param name="model">The house, ready.</param>
    /// <param name="spots">The spots.</param>
    /// <param name="seats">The seats.</param>
    /// <param name="basis">How uncertain the figures are.</param>
    /// <param name="confidence">How often a margin that is counted on is exceeded, above 0 and below 1.</param>
    public static HouseUncertainty Of(
        LinkModel model, IReadOnlyList<Spot> spots, IReadOnlyList<Seat> seats, UncertaintyBasis basis, double confidence = UncertaintyBasis.UsualConfidence)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(basis);
        var stored = StoredPaths.Of(model, spots, seats);
        var draws = new LinkDraws(stored, model.Radios, basis);
        var uncertainty = new HouseUncertainty(confidence, basis.Draws);
        (Spot Spot, Seat Seat)[] pairs = [.. spots.SelectMany(spot => seats.Select(seat => (spot, seat)))];
        var margins = new (DrawnMargins Drawn, double MarginAtConfidenceDb)[pairs.Length];
        Parallel.For(0, pairs.Length, i =>
        {
            DrawnMargins drawn = draws.Of(
                stored.Links[i], basis.Fitted?.Find(model.House.PositionOf(pairs[i].Spot), model.House.PositionOf(pairs[i].Seat)));
            margins[i] = (drawn, drawn.ExceededDb(confidence));
        });
        for (int i = 0; i < pairs.Length; i++)
        {
            uncertainty.links.Add((pairs[i].Spot.Name, pairs[i].Seat.Name), margins[i]);
        }

        return uncertainty;
    }

    /// <summary>One link's margins in the drawn houses.</summary>
    public DrawnMargins With(LinkBudget budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return links[(budget.Spot.Name, budget.Seat.Name)].Drawn;
    }

    /// <summary>The margin to count on, dB.</summary>
    public double MarginAtConfidenceDb(LinkBudget budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        return links[(budget.Spot.Name, budget.Seat.Name)].MarginAtConfidenceDb;
    }

    /// <summary>How likely a link passes, 0 to 1.</summary>
    public double ProbabilityPasses(LinkBudget budget) => With(budget).ProbabilityOf(budget.RequiredDb);

    /// <summary>How likely all of some links have it at once: not the product, since they stand in the same house.</summary>
    public double ProbabilityAllPass(IReadOnlyList<LinkBudget> budgets)
    {
        ArgumentNullException.ThrowIfNull(budgets);
        double sum = 0;
        for (int d = 0; d < Draws; d++)
        {
            double all = 1;
            foreach (LinkBudget budget in budgets)
            {
                all *= With(budget).ProbabilityOf(budget.RequiredDb, d);
            }

            sum += all;
        }

        return sum / Draws;
    }

    /// <summary>How likely each of some spots is the best one, by its worst seat, 0 to 1; together 1.</summary>
    public IReadOnlyList<double> ProbabilitiesBest(IReadOnlyList<SpotScore> spots)
    {
        ArgumentNullException.ThrowIfNull(spots);
        return BestSpots.Probabilities(this, spots);
    }
}
