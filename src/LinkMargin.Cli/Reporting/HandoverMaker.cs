using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;
using LinkMargin.Reports.Handover;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Reporting;

/// <summary>Computes the results of a report, with a progress bar.</summary>
/// <param name="invocation">Where messages go.</param>
/// <param name="loaded">The house.</param>
/// <param name="model">The model of the house.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class HandoverMaker(Invocation invocation, LoadedHouse loaded, LinkModel model, double confidence)
{
    private const int Steps = 1000;

    /// <summary>Computes the results.</summary>
    /// <param name="choose">Chooses the spot that the report is about.</param>
    /// <param name="cellMetres">Side of a cell of the maps, metres.</param>
    public HandoverFindings Make(Func<Ranking, SpotScore> choose, double cellMetres)
    {
        var computation = new HandoverComputation(loaded, model, confidence);
        SpotScore chosen = choose(computation.Ranking);
        var progress = new Progress(Steps);
        HandoverFindings? findings = null;
        ProgressBar.While(
            invocation, "report", progress, () => findings = computation.Run(chosen, cellMetres, share => progress.Reach((long)(share * Steps)), invocation.Cancellation));
        return findings!;
    }
}
