using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Sensitivity;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Handover;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Reporting;

/// <summary>Computes what a report rests on, with a progress bar.</summary>
/// <param name="invocation">Where messages go.</param>
/// <param name="loaded">The house.</param>
/// <param name="model">The same, ready.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class HandoverMaker(Invocation invocation, LoadedHouse loaded, LinkModel model, double confidence)
{
    /// <summary>Side of a cell of the maps where nothing else is said, metres: lines between cells are drawn smoothly.</summary>
    public const double UsualCellMetres = 0.2;

    private const int Steps = 1000;

    // Shares of the time, roughly; only the bar depends on them.
    private const double RemediesShare = 0.3, AssumptionsShare = 0.3, MapsShare = 0.4;

    private readonly House house = loaded.House;

    /// <summary>Computes.</summary>
    /// <param name="choose">Says which spot the report is about.</param>
    /// <param name="cellMetres">Side of a cell of the maps, metres.</param>
    public HandoverFindings Make(Func<Ranking, SpotScore> choose, double cellMetres)
    {
        var uncertainty = HouseUncertainty.Of(model, house.Spots, house.Seats, loaded.Uncertainty, confidence);
        Ranking ranking = Ranking.Of(model, uncertainty.AtConfidence);
        SpotScore chosen = choose(ranking);
        var call = CloseCall.Of(model, ranking, uncertainty, loaded.Uncertainty);
        var progress = new Progress(Steps);
        HandoverFindings? findings = null;
        ProgressBar.While(invocation, "report", progress, () =>
        {
            ImproveResult remedies = new ImproveSearch(house, model, ImproveRequests.For(chosen.Spot, loaded.Tables), new JudgeAtConfidence(loaded.Uncertainty, confidence))
                .Run(share => Reach(share * RemediesShare), invocation.Cancellation);
            MaterialTables tables = loaded.Tables;
            SensitivityStudy study = SensitivityStudy.Of(
                house,
                new SensitivityBase(model, ranking, uncertainty, loaded.Uncertainty),
                new SensitivityRequest(new PlausibleRows(material => RowAlternatives.Of(tables, material), buildUp => RowAlternatives.Of(tables, buildUp))),
                share => Reach(RemediesShare + (share * AssumptionsShare)),
                invocation.Cancellation);
            findings = new HandoverFindings(loaded, model, ranking, uncertainty, call, chosen)
            {
                Remedies = remedies,
                Study = study,
                Runs = RankedRuns.Of(house, ranking),
                Fields = Fields(cellMetres, share => Reach(RemediesShare + AssumptionsShare + (share * MapsShare))),
            };
        });
        return findings!;

        void Reach(double share) => progress.Reach((long)(share * Steps));
    }

    private List<(Field Median, Field AtConfidence)> Fields(double cellMetres, Action<double> reach)
    {
        List<(Field Median, Field AtConfidence)> fields = [];
        int all = house.Spots.Count * house.Levels.Count;
        foreach (Spot spot in house.Spots)
        {
            for (int level = 0; level < house.Levels.Count; level++)
            {
                Field plain = FieldComputation.Compute(model, new FieldRequest(spot, level) { CellMetres = cellMetres }, null, invocation.Cancellation);
                fields.Add((plain, FieldAtConfidence.Of(model, plain, loaded.Uncertainty, confidence)));
                reach((double)fields.Count / all);
            }
        }

        return fields;
    }
}
