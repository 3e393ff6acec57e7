using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Decisions;

/// <summary>Judges by the median margin: as likely too high as too low.</summary>
public sealed class MedianJudge : ISpotJudge
{
    private MedianJudge()
    {
    }

    /// <summary>The one there is.</summary>
    public static MedianJudge Instance { get; } = new();

    /// <inheritdoc/>
    public SpotScore Score(LinkModel model, Spot spot, IReadOnlyList<Seat> seats) => new(spot, LinkEvaluation.Budgets(model, spot, seats));

    /// <inheritdoc/>
    public double LeastAllowanceDb(LinkModel model) => 0;
}
