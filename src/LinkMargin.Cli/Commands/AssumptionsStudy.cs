using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Sensitivity;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Commands;

/// <summary>Recomputes a house with other table rows, with a progress bar.</summary>
internal static class AssumptionsStudy
{
    private const int ProgressSteps = 1000;

    /// <summary>Studies the assumptions behind one link; all spots and seats count for the decision.</summary>
    public static SensitivityStudy Of(Invocation invocation, LoadedHouse loaded, LinkModel model, double confidence, LinkBudget focus)
    {
        var uncertainty = HouseUncertainty.Of(model, loaded.House.Spots, loaded.House.Seats, loaded.Uncertainty, confidence);
        return Of(invocation, loaded, new SensitivityBase(model, Ranking.Of(model, uncertainty.AtConfidence), uncertainty, loaded.Uncertainty), focus);
    }

    /// <summary>The same for a house that is already computed; about the decision if no link is named.</summary>
    public static SensitivityStudy Of(Invocation invocation, LoadedHouse loaded, SensitivityBase before, LinkBudget? focus)
    {
        MaterialTables tables = loaded.Tables;
        var request = new SensitivityRequest(new PlausibleRows(
            material => RowAlternatives.Of(tables, material), buildUp => RowAlternatives.Of(tables, buildUp))) { Focus = focus };
        var progress = new Progress(ProgressSteps);
        SensitivityStudy? study = null;
        ProgressBar.While(invocation, "assumptions", progress, () => study = SensitivityStudy.Of(
            loaded.House, before, request, share => progress.Reach((long)(share * ProgressSteps)), invocation.Cancellation));
        return study!;
    }
}
