using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Decisions;

/// <summary>
/// The margin of a link that decisions use. Everything that ranks, places or improves gets it here, so that it can change in
/// one place.
/// </summary>
/// <param name="Words">What it is, such as <c>median margin</c>.</param>
/// <param name="MarginDb">The margin to count on, dB.</param>
public sealed record DecisionMargin(string Words, Func<LinkBudget, double> MarginDb)
{
    /// <summary>The median: as likely too high as too low.</summary>
    public static DecisionMargin Median { get; } = new("median margin", budget => budget.MarginDb);

    /// <summary>The margin to count on minus what the seat requires, dB.</summary>
    public double HeadroomDb(LinkBudget budget) => MarginDb(budget) - budget.RequiredDb;

    /// <summary>Whether the margin to count on is at least what the seat requires.</summary>
    public bool Passes(LinkBudget budget) => HeadroomDb(budget) >= 0;
}

/// <summary>
/// Says how good a spot is. Searches (for places, for remedies) use it for every house and spot they try, so that one search
/// works for the median and for the margin to count on.
/// </summary>
public interface ISpotJudge
{
    /// <summary>Scores a spot.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="spot">The spot; it need not be one of the house's.</param>
    /// <param name="seats">The seats it is played from, at least one.</param>
    public SpotScore Score(LinkModel model, Spot spot, IReadOnlyList<Seat> seats);

    /// <summary>Scores a spot whose budgets are known.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="spot">The spot; it need not be one of the house's.</param>
    /// <param name="budgets">Its budget with each seat it is played from, at least one.</param>
    public SpotScore Score(LinkModel model, Spot spot, IReadOnlyList<LinkBudget> budgets);

    /// <summary>Headroom of the weakest seat at each of some places, from links computed backwards, dB.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="backwards">The links: seat by seat, each with the places in their order.</param>
    /// <param name="seats">The seats.</param>
    /// <param name="places">The places.</param>
    public double[] WeakestHeadroomDb(LinkModel model, StoredPaths backwards, IReadOnlyList<Seat> seats, IReadOnlyList<Point3> places);

    /// <summary>Least amount by which the margin that counts is below the median on any link, dB; 0 where nothing is known.</summary>
    /// <param name="model">The model of the house.</param>
    public double LeastAllowanceDb(LinkModel model);
}

/// <summary>Judges by the median margin: as likely too high as too low.</summary>
public sealed class MedianJudge : ISpotJudge
{
    private MedianJudge()
    {
    }

    /// <summary>The only instance.</summary>
    public static MedianJudge Instance { get; } = new();

    /// <inheritdoc/>
    public SpotScore Score(LinkModel model, Spot spot, IReadOnlyList<Seat> seats) => Score(model, spot, LinkEvaluation.Budgets(model, spot, seats));

    /// <inheritdoc/>
    public SpotScore Score(LinkModel model, Spot spot, IReadOnlyList<LinkBudget> budgets) => new(spot, budgets);

    /// <inheritdoc/>
    public double[] WeakestHeadroomDb(LinkModel model, StoredPaths backwards, IReadOnlyList<Seat> seats, IReadOnlyList<Point3> places)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(backwards);
        double[] none = new double[backwards.Parameters.Count];
        return [.. places.Select((_, place) => seats.Select((seat, i) =>
            model.Radios.GreatestLossDb - backwards.Links[(i * places.Count) + place].PathLossDb(none) - seat.RequiredDb).Min())];
    }

    /// <inheritdoc/>
    public double LeastAllowanceDb(LinkModel model) => 0;
}
