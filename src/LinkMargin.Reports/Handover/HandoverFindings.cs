using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Sensitivity;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Tables;
using LinkMargin.Plots.Printing;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>Everything that a report to hand over rests on, computed.</summary>
/// <param name="Loaded">The house.</param>
/// <param name="Model">The same, ready.</param>
/// <param name="Ranking">Its spots, best first; at least one.</param>
/// <param name="Uncertainty">The uncertainty of its links.</param>
/// <param name="Call">How likely each spot is the best.</param>
/// <param name="Chosen">The spot the report is about.</param>
internal sealed record HandoverFindings(
    LoadedHouse Loaded, LinkModel Model, Ranking Ranking, HouseUncertainty Uncertainty, CloseCall Call, SpotScore Chosen)
{
    /// <summary>What recomputing the assumptions gave.</summary>
    public required SensitivityStudy Study { get; init; }

    /// <summary>What would help the chosen spot; null where no seat plays there.</summary>
    public required ImproveResult Remedies { get; init; }

    /// <summary>The margin over every level for every spot, median and to count on.</summary>
    public required IReadOnlyList<(Field Median, Field AtConfidence)> Fields { get; init; }

    /// <summary>The cable runs of each spot of the ranking, in its order; empty where the house file describes no display.</summary>
    public IReadOnlyList<SpotRuns> Runs { get; init; } = [];

    /// <summary>The cable runs of the chosen spot; null where there are no displays.</summary>
    public SpotRuns? RunsOfChosen => Runs.FirstOrDefault(runs => runs.Spot.Name == Chosen.Spot.Name);

    /// <summary>The house.</summary>
    public House House => Loaded.House;

    /// <summary>Whether the chosen spot is the best of the ranking.</summary>
    public bool IsBest => Chosen == Ranking.Scores[0];

    /// <summary>The seats that play at the chosen spot with their numbers, from 1 in the order of the house file.</summary>
    public IReadOnlyList<(int Number, LinkBudget Link)> NumberedSeats => [.. Chosen.Budgets.Select((link, i) => (i + 1, link))];

    /// <summary>All seats in the order of their numbers, which hold throughout the report: those that play at other spots only follow.</summary>
    public IReadOnlyList<Seat> SeatsByNumber =>
    [
        .. Chosen.Budgets.Select(link => link.Seat),
        .. House.Seats.Where(seat => Chosen.With(seat) is null),
    ];

    /// <summary>
    /// What a probability that a seat passes means, in words: by the percentage that is printed, so that none stands beside the words of
    /// another, but never across the line between passing and not.
    /// </summary>
    public PassingBand BandOf(LinkBudget link)
    {
        double likely = Uncertainty.ProbabilityPasses(link), printed = UncertaintyWords.Percent(likely) / 100.0, line = Uncertainty.Confidence;
        return Loaded.Tables.BandOf(printed >= line == likely >= line ? printed : likely);
    }

    /// <summary>The name of a level.</summary>
    public string LevelOf(int index) => House.Levels[index].Name;

    /// <summary>A spot with its level.</summary>
    public string Named(Spot spot) => $"'{spot.Name}' (level {LevelOf(spot.LevelIndex)})";
}

/// <summary>What a person gives a report besides the house.</summary>
internal sealed record HandoverRequest
{
    /// <summary>The title; null for one made of the house's name.</summary>
    public string? Title { get; init; }

    /// <summary>For whom it is; null for nobody named.</summary>
    public string? For { get; init; }

    /// <summary>Who made it; null for nobody named.</summary>
    public string? By { get; init; }

    /// <summary>A person's own picture; null for none.</summary>
    public PhotoPicture? Logo { get; init; }

    /// <summary>Room for pictures between the margins, points.</summary>
    public double WidthPoints { get; init; } = 509;
}
