using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>What would help a spot, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Occupied">Seats with people who stand in the way.</param>
/// <param name="Before">How the spot serves its seats as things are.</param>
/// <param name="Remedies">What helps by itself, the greatest gain first.</param>
/// <param name="Pairs">Two together, where one is not enough.</param>
/// <param name="Tried">How many remedies were worked out.</param>
/// <param name="CanMeetEverySeat">Whether every seat is met, as things are or with something told here.</param>
public sealed record ImproveDocument(
    string House,
    IReadOnlyList<string> Occupied,
    RankDocument Before,
    IReadOnlyList<RemedyDocument> Remedies,
    IReadOnlyList<RemedyDocument> Pairs,
    int Tried,
    bool CanMeetEverySeat)
{
    /// <summary>How often a margin told here is exceeded, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>What is different from the house file; left out where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many readings the losses were fitted to; left out where they are the tables'.</summary>
    public int? FittedToMeasurements { get; init; }

    /// <summary>Remedies as JSON says them.</summary>
    /// <param name="house">The house.</param>
    /// <param name="result">What was found.</param>
    /// <param name="occupied">The seats with people who stand in the way.</param>
    /// <param name="confidence">How often a margin that is counted on is exceeded, 0 to 1.</param>
    /// <param name="words">What a remedy is, in words.</param>
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
            result.CanMeetAll)
        {
            Confidence = confidence,
        };
    }
}
