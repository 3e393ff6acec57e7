using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Sensitivity;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Reports.Handover;

/// <summary>Computes what a report rests on.</summary>
/// <param name="loaded">The house.</param>
/// <param name="model">The same, ready.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class HandoverComputation(LoadedHouse loaded, LinkModel model, double confidence)
{
    /// <summary>Side of a cell of the maps where nothing else is said, metres: lines between cells are drawn smoothly.</summary>
    public const double UsualCellMetres = 0.2;

    // Shares of the time, roughly; only the progress shown depends on them.
    private const double RemediesShare = 0.3, AssumptionsShare = 0.3, MapsShare = 0.4;

    private readonly House house = loaded.House;
    private Ranking? ranking;
    private HouseUncertainty? uncertainty;

    /// <summary>The spots, best first.</summary>
    public Ranking Ranking => ranking ??= Ranking.Of(model, Uncertainty.AtConfidence);

    private HouseUncertainty Uncertainty => uncertainty ??= HouseUncertainty.Of(model, house.Spots, house.Seats, loaded.Uncertainty, confidence);

    /// <summary>Computes all of it.</summary>
    /// <param name="chosen">The spot of <see cref="Ranking"/> that the report is about.</param>
    /// <param name="cellMetres">Side of a cell of the maps, metres.</param>
    /// <param name="reach">Called with the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    public HandoverFindings Run(SpotScore chosen, double cellMetres, Action<double> reach, CancellationToken cancellation)
    {
        var call = CloseCall.Of(model, Ranking, Uncertainty, loaded.Uncertainty);
        ImproveResult remedies = new ImproveSearch(house, model, ImproveRequests.For(chosen.Spot, loaded.Tables), new JudgeAtConfidence(loaded.Uncertainty, confidence))
            .Run(share => reach(share * RemediesShare), cancellation);
        MaterialTables tables = loaded.Tables;
        SensitivityStudy study = SensitivityStudy.Of(
            house,
            new SensitivityBase(model, Ranking, Uncertainty, loaded.Uncertainty),
            new SensitivityRequest(new PlausibleRows(material => RowAlternatives.Of(tables, material), buildUp => RowAlternatives.Of(tables, buildUp))),
            share => reach(RemediesShare + (share * AssumptionsShare)),
            cancellation);
        return new HandoverFindings(loaded, model, Ranking, Uncertainty, call, chosen)
        {
            Remedies = remedies,
            Study = study,
            Runs = RankedRuns.Of(house, Ranking),
            Fields = Fields(cellMetres, share => reach(RemediesShare + AssumptionsShare + (share * MapsShare)), cancellation),
        };
    }

    private List<(Field Median, Field AtConfidence)> Fields(double cellMetres, Action<double> reach, CancellationToken cancellation)
    {
        List<(Field Median, Field AtConfidence)> fields = [];
        int all = house.Spots.Count * house.Levels.Count;
        foreach (Spot spot in house.Spots)
        {
            for (int level = 0; level < house.Levels.Count; level++)
            {
                Field plain = FieldComputation.Compute(model, new FieldRequest(spot, level) { CellMetres = cellMetres }, null, cancellation);
                fields.Add((plain, FieldAtConfidence.Of(model, plain, loaded.Uncertainty, confidence)));
                reach((double)fields.Count / all);
            }
        }

        return fields;
    }
}
