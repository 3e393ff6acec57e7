using System.Collections.Concurrent;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>The uncertainty of the margins of a house's links, all in the same drawn houses.</summary>
public sealed class HouseUncertainty
{
    private readonly Dictionary<(string Spot, string Seat), LinkAtConfidence> links = [];

    private HouseUncertainty(double confidence, int draws) => (Confidence, Draws) = (confidence, draws);

    /// <summary>How often the margin to count on is exceeded, 0 to 1.</summary>
    public double Confidence { get; }

    /// <summary>How many houses were drawn.</summary>
    public int Draws { get; }

    /// <summary>The margin to count on, for ranking and judging.</summary>
    public DecisionMargin AtConfidence => new("margin to count on", MarginAtConfidenceDb);

    /// <summary>Draws houses and computes each seat with each spot in every draw.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="spots">The spots.</param>
    /// <param name="seats">The seats.</param>
    /// <param name="basis">How uncertain the figures are.</param>
    /// <param name="confidence">How often the margin to count on is exceeded, above 0 and below 1.</param>
    public static HouseUncertainty Of(
        LinkModel model, IReadOnlyList<Spot> spots, IReadOnlyList<Seat> seats, UncertaintyBasis basis, double confidence = UncertaintyBasis.UsualConfidence) =>
        Of(model, spots, seats, basis, confidence, new KnownDraws(basis));

    /// <summary>The same with what is known already.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="spots">The spots.</param>
    /// <param name="seats">The seats.</param>
    /// <param name="basis">How uncertain the figures are.</param>
    /// <param name="confidence">How often the margin to count on is exceeded, above 0 and below 1.</param>
    /// <param name="known">What this basis and confidence gave before; what is new is added.</param>
    internal static HouseUncertainty Of(
        LinkModel model, IReadOnlyList<Spot> spots, IReadOnlyList<Seat> seats, UncertaintyBasis basis, double confidence, KnownDraws known)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(basis);
        ConcurrentDictionary<(Spot Spot, Seat Seat), LinkAtConfidence> margins = known.MarginsOf(model);
        ConcurrentDictionary<(Spot Spot, Seat Seat), double[]> lossesDb = known.LossesDbOf(model);
        (Spot Spot, Seat Seat)[] pairs = [.. spots.SelectMany(spot => seats.Select(seat => (spot, seat)))];
        (Spot Spot, Seat Seat)[] missing = [.. pairs.Where(pair => !margins.ContainsKey(pair))], untraced = [.. missing.Where(pair => !lossesDb.ContainsKey(pair))];
        var stored = StoredPaths.Of(model, untraced);
        var draws = new LinkDraws(stored, model.Radios, basis, known.Sampler);
        Dictionary<Spot, LinkDraws> drawsAt = spots.Distinct().ToDictionary(spot => spot, spot => draws.With(model.RadiosAt(spot)));
        Parallel.For(0, untraced.Length, i => lossesDb[untraced[i]] = draws.LossesDb(stored.Links[i]));
        Parallel.For(0, missing.Length, i =>
        {
            (Spot spot, Seat seat) = missing[i];
            DrawnMargins drawn = drawsAt[spot].Of(lossesDb[missing[i]], basis.Fitted?.Find(model.House.PositionOf(spot), model.House.PositionOf(seat)));
            margins[missing[i]] = new LinkAtConfidence(drawn, drawn.ExceededDb(confidence));
        });
        var uncertainty = new HouseUncertainty(confidence, basis.Draws);
        foreach ((Spot spot, Seat seat) in pairs)
        {
            uncertainty.links.Add((spot.Name, seat.Name), margins[(spot, seat)]);
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

    /// <summary>One link's margins in the drawn houses, and the margin to count on, dB.</summary>
    public (DrawnMargins Drawn, double MarginAtConfidenceDb) Between(Spot spot, Seat seat)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(seat);
        LinkAtConfidence link = links[(spot.Name, seat.Name)];
        return (link.Drawn, link.MarginAtConfidenceDb);
    }

    /// <summary>Probability that a link passes, 0 to 1.</summary>
    public double ProbabilityPasses(LinkBudget budget) => With(budget).ProbabilityOf(budget.RequiredDb);

    /// <summary>Probability that all of some links pass at once: not the product, since they are in the same house.</summary>
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

    /// <summary>How likely each of some spots is the best one, by its weakest seat, 0 to 1; together 1.</summary>
    public IReadOnlyList<double> ProbabilitiesBest(IReadOnlyList<SpotScore> spots)
    {
        ArgumentNullException.ThrowIfNull(spots);
        return BestSpots.Probabilities(this, spots);
    }
}

/// <summary>One link in the drawn houses.</summary>
/// <param name="Drawn">Its margins.</param>
/// <param name="MarginAtConfidenceDb">The margin to count on, dB.</param>
internal sealed record LinkAtConfidence(DrawnMargins Drawn, double MarginAtConfidenceDb);

/// <summary>How uncertain a house's figures are, and how that is drawn.</summary>
/// <param name="Spreads">What applies apart from each material's and radio's own spread.</param>
/// <param name="Fitted">The remaining spreads of fitted materials and their correlations; null where nothing was fitted.</param>
public sealed record UncertaintyBasis(Spreads Spreads, FittedLosses? Fitted = null)
{
    /// <summary>How often a margin to count on is exceeded, unless requested otherwise.</summary>
    public const double UsualConfidence = 0.9;

    /// <summary>How many draws of the house, at least 1.</summary>
    public int Draws { get; init; } = 1000;

    /// <summary>Which draws: the same seed gives the same.</summary>
    public ulong Seed { get; init; } = 1;
}

/// <summary>
/// Spread of a material's loss from place to place in one house: the share of its row's variance that belongs to each crossing,
/// and the effect of its layers' tolerances, since no two cavities have the same depth. The two add as variances: a row's spread
/// is the error of its figure for a wall built exactly as the row says.
/// </summary>
internal static class PlaceSpreads
{
    /// <summary>One standard deviation for each material, dB.</summary>
    internal static double[] Of(StoredPaths stored, UncertaintyBasis basis) =>
        [.. stored.Materials.Select((material, i) =>
            double.Hypot(basis.Spreads.EachCrossingDb(material.SpreadDb), stored.ToleranceSpreadsDb[i]))];
}
