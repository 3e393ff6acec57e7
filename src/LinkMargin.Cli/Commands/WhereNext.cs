using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Measuring;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Json;
using LinkMargin.Plots.Plans;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>Which measurements to take next, before or after the first ones.</summary>
internal static class WhereNext
{
    private const int Most = 5;

    /// <summary>Finds and reports them.</summary>
    /// <param name="invocation">Where the command writes and where relative paths start.</param>
    /// <param name="loaded">The house with its table losses.</param>
    /// <param name="fit">A fit to earlier measurements; null if there are none.</param>
    /// <param name="depth">How much of the physics is included.</param>
    /// <param name="picture">Where the plan goes; null for no plan.</param>
    /// <param name="asJson">Whether one JSON document is wanted.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public static void Tell(
        Invocation invocation, LoadedHouse loaded, HouseFit? fit, ModelDepth depth, string? picture, bool asJson, bool force)
    {
        HouseLoading.NeedSpotsAndSeats(loaded);
        FittedLosses? fitted = fit?.Losses;
        House house = fitted?.ApplyTo(loaded.House) ?? loaded.House;
        var basis = new UncertaintyBasis(loaded.Spreads, fitted);
        var model = new LinkModel(house, depth);
        Ranking ranking = Ranking.Of(model, HouseUncertainty.Of(model, house.Spots, house.Seats, basis).AtConfidence);
        IReadOnlyList<NextMeasurement> next = NextMeasurements.Of(
            model, ranking, basis, fitted?.Devices.Min(device => device.SpreadDb), Most, FieldRequest.SofaHandsMetres);
        if (picture is not null)
        {
            invocation.Files.Write(picture, Drawn(loaded, next), force);
        }

        if (asJson)
        {
            invocation.Output.WriteLine(JsonText.Of(new NextMeasurementsDocument(
                house.Name, fit?.Measurements.Count ?? 0, [.. next.Select(one => NextMeasurementDocument.Of(house, one))], picture) { WhatIf = loaded.WhatIfOrNone }));
            return;
        }

        loaded.WriteWhatIf(invocation.Output, invocation.Width);
        new NextMeasurementsText(loaded, ranking, next) { Picture = picture }.Write(invocation.Output, invocation.Width);
    }

    private static byte[] Drawn(LoadedHouse loaded, IReadOnlyList<NextMeasurement> next)
    {
        PlanRequest request = PlanRequest.OfAllLevels(
            loaded.House,
            $"{loaded.House.Name}: where to measure next",
            "Each number shows where to transmit and where to receive, in this order. First take one more measurement in sight of the transmitter.") with
        {
            Unit = loaded.PlotUnit,
            Measurements = [.. next.Select((one, i) => new MeasurementMark(one.LevelIndex, one.Plan, FormattableString.Invariant($"{i + 1}: from {one.Transmitter.Name}")))],
        };
        return PlanPicture.Render(request, PlanPicture.FittingSize(request));
    }
}
