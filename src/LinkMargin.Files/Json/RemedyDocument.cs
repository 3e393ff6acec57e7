using LinkMargin.Engine.Decisions.Remedies;

namespace LinkMargin.Files.Json;

/// <summary>One remedy or two together, as JSON.</summary>
/// <param name="What">What is done, one phrase each.</param>
/// <param name="Effort">The most it asks of somebody: free, small, buy or cable.</param>
/// <param name="LengthM">Length of a lead or cable, metres; left out where there is none.</param>
/// <param name="GainDb">How much more headroom the worst seat then has, dB; it may be another seat then.</param>
/// <param name="GainAtSeatDb">The same at the seat that was worst before, dB; left out where that is on a cable.</param>
/// <param name="WorstSeat">The worst seat then.</param>
/// <param name="HeadroomDb">Its margin less what it asks for, dB.</param>
/// <param name="SeatsPassing">How many seats are then met.</param>
/// <param name="Seats">How many seats there are then.</param>
public sealed record RemedyDocument(
    IReadOnlyList<string> What,
    string Effort,
    double? LengthM,
    double GainDb,
    double? GainAtSeatDb,
    string WorstSeat,
    double HeadroomDb,
    int SeatsPassing,
    int Seats)
{
    /// <summary>How likely every seat then has what it asks for at once, 0 to 1; left out where no doubt was worked out.</summary>
    public double? ProbabilityAllPass { get; init; }

    /// <summary>How likely the seat that was worst before then has what it asks for, 0 to 1; left out where it is on a cable.</summary>
    public double? ProbabilityAtSeat { get; init; }

    /// <summary>Other variants of it, the greatest gain first.</summary>
    public IReadOnlyList<RemedyDocument> Alternatives { get; init; } = [];

    /// <summary>Cautions about the figure of the seat that is then worst.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    internal static RemedyDocument Of(RemedyResult result, Func<Remedy, string> words) => new(
        [.. result.Remedies.Select(words)],
        result.Effort.ToString().ToLowerInvariant(),
        result.Remedies.Max(remedy => remedy.LengthMetres),
        result.GainDb,
        result.GainAtSeatDb,
        result.After.Worst.Seat.Name,
        result.After.WorstHeadroomDb,
        result.After.SeatsPassing,
        result.After.Seats)
    {
        ProbabilityAtSeat = result.ProbabilityAtSeat,
        Alternatives = [.. result.Alternatives.Select(other => Of(other, words))],
        Cautions = result.After.Worst.Cautions,
        ProbabilityAllPass = result.After.ProbabilityAllPass,
    };
}
