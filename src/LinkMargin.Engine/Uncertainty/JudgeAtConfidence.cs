using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// Judges by the margin to count on, in the same drawn houses for every spot and edit that is tried: a material's draws depend
/// only on its name.
/// </summary>
/// <param name="basis">How uncertain the figures are.</param>
/// <param name="confidence">How often the margin to count on is exceeded, above 0 and below 1.</param>
public sealed class JudgeAtConfidence(UncertaintyBasis basis, double confidence = UncertaintyBasis.UsualConfidence) : ISpotJudge
{
    // How much more headroom a spot may have than its median less the least allowance: paths that are uncertain, each by itself, add up to more than
    // their medians.
    private const double AllowanceSlackDb = 1;

    private readonly KnownDraws known = new(basis);

    /// <summary>
    /// The best of the house's spots, as <see cref="Ranking"/> has it; null where none is played from a seat. A spot whose weakest seat has too
    /// little headroom by the median is not drawn.
    /// </summary>
    /// <param name="model">The model of the house.</param>
    public SpotScore? BestSpot(LinkModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var drawn = new List<SpotScore>();
        foreach (SpotScore median in Ranking.Of(model).Scores)
        {
            double mostDb = median.WeakestHeadroomDb - LeastAllowanceDb(model.RadiosAt(median.Spot)) + AllowanceSlackDb;
            if (drawn.Count == 0 || mostDb >= drawn.Max(score => score.WeakestHeadroomDb))
            {
                drawn.Add(Score(model, median.Spot, median.Budgets));
            }
        }

        return Ranking.Of(drawn).Scores is [var best, ..] ? best : null;
    }

    /// <inheritdoc/>
    public SpotScore Score(LinkModel model, Spot spot, IReadOnlyList<Seat> seats) => Score(model, spot, LinkEvaluation.Budgets(model, spot, seats));

    /// <inheritdoc/>
    public SpotScore Score(LinkModel model, Spot spot, IReadOnlyList<LinkBudget> budgets)
    {
        var uncertainty = HouseUncertainty.Of(
            model, [spot], [.. budgets.Select(budget => budget.Seat)], basis, confidence, known);

        // Whatever the spot is called later, these are its margins.
        return new SpotScore(spot, budgets, new DecisionMargin(uncertainty.AtConfidence.Words, budget => uncertainty.MarginAtConfidenceDb(budget with { Spot = spot })))
        {
            ProbabilitiesPassing = budgets.ToDictionary(budget => budget.Seat.Name, uncertainty.ProbabilityPasses),
            ProbabilityAllPass = uncertainty.ProbabilityAllPass(budgets),
        };
    }

    /// <inheritdoc/>
    public double[] WeakestHeadroomDb(LinkModel model, StoredPaths backwards, IReadOnlyList<Seat> seats, IReadOnlyList<Point3> places)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(backwards);
        ArgumentNullException.ThrowIfNull(seats);
        ArgumentNullException.ThrowIfNull(places);
        var draws = new LinkDraws(backwards, model.Radios, basis, known.Sampler);
        double[] headroomDb = new double[backwards.Links.Count], weakestDb = new double[places.Count];
        Parallel.For(0, headroomDb.Length, i =>
        {
            Seat seat = seats[i / places.Count];
            FittedLink? read = basis.Fitted?.Find(places[i % places.Count], model.House.PositionOf(seat));
            headroomDb[i] = draws.Of(backwards.Links[i], read).ExceededDb(confidence) - seat.RequiredDb;
        });
        for (int place = 0; place < weakestDb.Length; place++)
        {
            weakestDb[place] = Enumerable.Range(0, seats.Count).Min(seat => headroomDb[(seat * places.Count) + place]);
        }

        return weakestDb;
    }

    /// <inheritdoc/>
    /// <remarks>
    /// Both radios and what the model leaves out are normal and independent of the losses, so the spread of a link's margin is at
    /// least their combined spread.
    /// </remarks>
    public double LeastAllowanceDb(LinkModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return LeastAllowanceDb(model.Radios);
    }

    private double LeastAllowanceDb(RadioPair radios)
    {
        double modelDb = (basis.Fitted?.Links ?? []).Select(link => link.SpreadDb).Append(basis.Spreads.ModelDb).Min();
        double spreadDb = double.Hypot(modelDb, double.Hypot(radios.Console.SpreadDb, radios.Controller.SpreadDb));
        return Math.Max(0, Normal.InvCDF(0, spreadDb, confidence));
    }
}
