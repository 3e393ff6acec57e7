using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Words;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Answers;

/// <summary>The figures of all seats for one spot.</summary>
/// <param name="models">Houses made ready.</param>
/// <param name="inFile">The house as its file has it.</param>
/// <param name="confidence">How often a margin that is counted on is exceeded, above 0 and below 1.</param>
internal sealed class SeatFigures(Models models, FileFigures inFile, double confidence)
{
    /// <summary>The seats that a console at a spot is played from, in a house.</summary>
    public IReadOnlyList<SeatFigure> Of(HouseState state, LoadedHouse now, IReadOnlyList<Seat> occupied, Spot spot)
    {
        Seat[] seats = [.. now.House.Seats.Where(seat => seat.IsPlayedAt(spot))];
        LinkModel model = models.For(now.House, occupied);
        var uncertainty = HouseUncertainty.Of(model, [spot], seats, now.Uncertainty, confidence);
        bool isTried = !ReferenceEquals(now.House, state.InFile.House) || occupied.Count > 0;
        return [.. seats.Select(seat => Of(uncertainty, spot, seat, isTried ? inFile.CountOnDb(state, spot.Name, seat.Name) : null))];
    }

    /// <summary>One seat's figures.</summary>
    public static SeatFigure Of(HouseUncertainty uncertainty, Spot spot, Seat seat, double? inFileDb)
    {
        (DrawnMargins drawn, double countOnDb) = uncertainty.Between(spot, seat);
        double probability = drawn.ProbabilityOf(seat.RequiredDb);
        return new SeatFigure(
            seat.Name,
            countOnDb,
            drawn.MedianDb,
            probability,
            countOnDb >= seat.RequiredDb,
            ShownMargin.Text(countOnDb, seat.RequiredDb),
            ShownMargin.Text(drawn.MedianDb),
            UncertaintyWords.Likely(probability),
            inFileDb);
    }

    /// <summary>What is found for one spot, in a sentence.</summary>
    public static string WordsOf(Spot spot, IReadOnlyList<SeatFigure> figures)
    {
        int passing = figures.Count(figure => figure.Passes);
        return figures.Count == 0
            ? $"{MapFindings.Capital(spot.Name)}: no seat plays here"
            : figures.Count == 1
                ? $"{MapFindings.Capital(spot.Name)}: the seat {(passing == 1 ? "passes" : "does not pass")}"
                : FormattableString.Invariant($"{MapFindings.Capital(spot.Name)}: {passing} of {figures.Count} seats pass");
    }
}
