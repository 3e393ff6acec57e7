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
/// <param name="models">Models of houses.</param>
/// <param name="inFile">The margins with the house as in its file.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class SeatFigures(Models models, FileFigures inFile, double confidence)
{
    /// <summary>The margins of the seats that play at a spot.</summary>
    public DrawnSeats Of(HouseState state, LoadedHouse now, IReadOnlyList<Seat> occupied, Spot spot)
    {
        Seat[] seats = SeatsOf(now.House, spot);
        LinkModel model = models.For(now.House, occupied);
        var uncertainty = HouseUncertainty.Of(model, [spot], seats, now.Uncertainty, confidence);
        LinkBudget[] budgets = LinkEvaluation.Budgets(model, spot, seats);
        return new DrawnSeats(
            spot.Name,
            seats.Zip(budgets).ToDictionary(pair => pair.First.Name, pair => new DrawnSeat(uncertainty.With(pair.Second), uncertainty.MarginAtConfidenceDb(pair.Second), pair.Second.MarginDb)),
            [.. seats.Select(seat => Of(uncertainty, spot, seat, InFileDb(state, now, occupied, spot, seat)))]);
    }

    /// <summary>
    /// The same at a small part of the cost, for use while dragging. The difference between drawn margins and the margin at the table
    /// losses changes slowly with the place, so the difference of a nearby place is used.
    /// </summary>
    /// <returns>Null if the nearby place is of another spot or lacks one of the seats.</returns>
    public IReadOnlyList<SeatFigure>? Quick(HouseState state, LoadedHouse now, IReadOnlyList<Seat> occupied, Spot spot, DrawnSeats? nearby)
    {
        Seat[] seats = SeatsOf(now.House, spot);
        if (nearby is null || nearby.Spot != spot.Name || !seats.All(seat => nearby.BySeat.ContainsKey(seat.Name)))
        {
            return null;
        }

        return [.. LinkEvaluation.Budgets(models.For(now.House, occupied), spot, seats).Select(budget =>
        {
            DrawnSeat drawn = nearby.BySeat[budget.Seat.Name];
            double moreDb = budget.MarginDb - drawn.PlainDb;
            return Of(
                budget.Seat,
                drawn.CountOnDb + moreDb,
                drawn.Drawn.MedianDb + moreDb,
                drawn.Drawn.ProbabilityOf(budget.Seat.RequiredDb - moreDb),
                InFileDb(state, now, occupied, spot, budget.Seat));
        })];
    }

    /// <summary>One seat's figures.</summary>
    public static SeatFigure Of(HouseUncertainty uncertainty, Spot spot, Seat seat, double? inFileDb)
    {
        (DrawnMargins drawn, double countOnDb) = uncertainty.Between(spot, seat);
        return Of(seat, countOnDb, drawn.MedianDb, drawn.ProbabilityOf(seat.RequiredDb), inFileDb);
    }

    /// <summary>The result for one spot, in a sentence.</summary>
    public static string WordsOf(Spot spot, IReadOnlyList<SeatFigure> figures)
    {
        int passing = figures.Count(figure => figure.Passes);
        return figures.Count == 0
            ? $"{MapFindings.Capital(spot.Name)}: no seat plays here"
            : $"{MapFindings.Capital(spot.Name)}: {SeatWords.Passing(passing, figures.Count)}";
    }

    private static SeatFigure Of(Seat seat, double countOnDb, double medianDb, double probability, double? inFileDb) => new(
        seat.Name,
        countOnDb,
        medianDb,
        probability,
        countOnDb >= seat.RequiredDb,
        ShownMargin.Text(countOnDb, seat.RequiredDb),
        ShownMargin.Text(medianDb),
        UncertaintyWords.Likely(probability),
        inFileDb);

    private static Seat[] SeatsOf(House house, Spot spot) => [.. house.Seats.Where(seat => seat.IsPlayedAt(spot))];

    private double? InFileDb(HouseState state, LoadedHouse now, IReadOnlyList<Seat> occupied, Spot spot, Seat seat) =>
        ReferenceEquals(now.House, state.InFile.House) && occupied.Count == 0 ? null : inFile.CountOnDb(state, spot.Name, seat.Name);
}

/// <summary>The seats' figures for a spot, and the draws behind them.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="BySeat">The draws of each seat, by name.</param>
/// <param name="Figures">The figures.</param>
internal sealed record DrawnSeats(string Spot, IReadOnlyDictionary<string, DrawnSeat> BySeat, IReadOnlyList<SeatFigure> Figures);

/// <summary>One seat's margins in the drawn houses.</summary>
/// <param name="Drawn">The margins.</param>
/// <param name="CountOnDb">The margin to count on.</param>
/// <param name="PlainDb">The margin at the table losses.</param>
internal sealed record DrawnSeat(DrawnMargins Drawn, double CountOnDb, double PlainDb);
