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
/// <param name="confidence">How often a margin that is counted on is exceeded, above 0 and below 1.</param>
internal sealed class SeatFigures(Models models, double confidence)
{
    private readonly Lock gate = new();
    private (HouseOnDisk? Disk, Dictionary<(string Spot, string Seat), double> CountOnDb) inFile = (null, []);

    /// <summary>The seats that a console at a spot is played from, in a house.</summary>
    public IReadOnlyList<SeatFigure> Of(HouseState state, LoadedHouse now, IReadOnlyList<Seat> occupied, Spot spot)
    {
        Seat[] seats = [.. now.House.Seats.Where(seat => seat.IsPlayedAt(spot))];
        LinkModel model = models.For(now.House, occupied);
        var uncertainty = HouseUncertainty.Of(model, [spot], seats, now.Uncertainty, confidence);
        return [.. seats.Select(seat => Of(uncertainty, spot, seat, InFileDb(state, spot.Name, seat.Name)))];
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

    /// <summary>The margin to count on with the house as its file has it, dB; null where the file has no such spot or seat.</summary>
    public double? InFileDb(HouseState state, string spot, string seat)
    {
        lock (gate)
        {
            if (!ReferenceEquals(inFile.Disk, state.Disk))
            {
                House house = state.InFile.House;
                var uncertainty = HouseUncertainty.Of(models.For(house, []), house.Spots, house.Seats, state.InFile.Uncertainty, confidence);
                inFile = (state.Disk, house.Spots.SelectMany(one => house.Seats.Select(other => (one, other)))
                    .ToDictionary(pair => (pair.one.Name, pair.other.Name), pair => uncertainty.Between(pair.one, pair.other).MarginAtConfidenceDb));
            }

            return inFile.CountOnDb.TryGetValue((spot, seat), out double countOnDb) ? countOnDb : null;
        }
    }
}
