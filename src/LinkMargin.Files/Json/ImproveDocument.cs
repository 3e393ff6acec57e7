using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>What would help a spot, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Occupied">Seats with people who obstruct other links.</param>
/// <param name="Before">The spot without a remedy.</param>
/// <param name="Remedies">Remedies that help alone, greatest gain first.</param>
/// <param name="Pairs">Pairs of remedies, if one is not enough.</param>
/// <param name="Tried">How many remedies were computed.</param>
/// <param name="CanPassEverySeat">Whether every seat passes, either already or with a remedy listed here.</param>
public sealed record ImproveDocument(
    string House,
    IReadOnlyList<string> Occupied,
    RankDocument Before,
    IReadOnlyList<RemedyDocument> Remedies,
    IReadOnlyList<RemedyDocument> Pairs,
    int Tried,
    bool CanPassEverySeat)
{
    /// <summary>Share of cases in which a margin in this document is reached, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many measurements the losses were fitted to; omitted for table losses.</summary>
    public int? FittedToMeasurements { get; init; }

    /// <summary>Remedies as a document.</summary>
    /// <param name="house">The house.</param>
    /// <param name="result">What was found.</param>
    /// <param name="occupied">The seats with people who obstruct other links.</param>
    /// <param name="confidence">Share of cases in which the margin to count on is reached, 0 to 1.</param>
    /// <param name="words">Describes a remedy in words.</param>
    public static ImproveDocument Of(House house, ImproveResult result, IReadOnlyList<Seat> occupied, double confidence, Func<Remedy, string> words)
    {
        ArgumentNullException.ThrowIfNull(result);
        return new(
            house.Name,
            [.. occupied.Select(seat => seat.Name)],
            RankDocument.Of(house, result.Before, 1),
            [.. result.Alone.Select(one => RemedyDocument.Of(one, words))],
            [.. result.Pairs.Select(pair => RemedyDocument.Of(pair, words))],
            result.Tried,
            result.CanPassAll)
        {
            Confidence = confidence,
        };
    }
}

/// <summary>One remedy or two together, as JSON.</summary>
/// <param name="Actions">What to do, one phrase each.</param>
/// <param name="Effort">The greatest effort: free, small, buy or cable.</param>
/// <param name="LengthM">Length of a lead or cable, metres; omitted if there is none.</param>
/// <param name="GainDb">Gain in headroom of the weakest seat, dB; that may be another seat then.</param>
/// <param name="GainAtSeatDb">Gain at the seat that was weakest before, dB; omitted if that seat is then wired.</param>
/// <param name="WeakestSeat">The weakest seat then.</param>
/// <param name="HeadroomDb">Its margin less the required margin, dB.</param>
/// <param name="SeatsPassing">How many seats then pass.</param>
/// <param name="Seats">How many seats there are then.</param>
public sealed record RemedyDocument(
    IReadOnlyList<string> Actions,
    string Effort,
    double? LengthM,
    double GainDb,
    double? GainAtSeatDb,
    string WeakestSeat,
    double HeadroomDb,
    int SeatsPassing,
    int Seats)
{
    /// <summary>Probability that every seat then passes at once, 0 to 1; omitted if no uncertainty was computed.</summary>
    public double? ProbabilityAllPass { get; init; }

    /// <summary>Probability that the seat that was weakest before then passes, 0 to 1; omitted if that seat is then wired.</summary>
    public double? ProbabilityAtSeat { get; init; }

    /// <summary>Other variants of it, greatest gain first.</summary>
    public IReadOnlyList<RemedyDocument> Alternatives { get; init; } = [];

    /// <summary>Cautions about the margin of the seat that is then weakest.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    internal static RemedyDocument Of(RemedyResult result, Func<Remedy, string> words) => new(
        [.. result.Remedies.Select(words)],
        result.Effort.ToString().ToLowerInvariant(),
        result.Remedies.Max(remedy => remedy.LengthMetres),
        result.GainDb,
        result.GainAtSeatDb,
        result.After.Weakest.Seat.Name,
        result.After.WeakestHeadroomDb,
        result.After.SeatsPassing,
        result.After.Seats)
    {
        ProbabilityAtSeat = result.ProbabilityAtSeat,
        Alternatives = [.. result.Alternatives.Select(other => Of(other, words))],
        Cautions = result.After.Weakest.Cautions,
        ProbabilityAllPass = result.After.ProbabilityAllPass,
    };
}
