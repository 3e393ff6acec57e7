namespace LinkMargin.Web.Protocol;

/// <summary>The seats' figures for one spot, as it stands while it is dragged.</summary>
/// <param name="Generation">The request it answers.</param>
/// <param name="Version">The house it was computed with.</param>
/// <param name="Spot">The spot.</param>
/// <param name="Words">What was found, in a sentence.</param>
/// <param name="Seats">The seats that play there.</param>
internal sealed record FiguresMessage(int Generation, int Version, string Spot, string Words, IReadOnlyList<SeatFigure> Seats) : Message("figures");

/// <summary>One seat with one spot.</summary>
/// <param name="Seat">The seat.</param>
/// <param name="CountOnDb">The margin to count on.</param>
/// <param name="MedianDb">The median.</param>
/// <param name="Probability">How likely it passes, 0 to 1.</param>
/// <param name="Passes">Whether it passes by the margin to count on.</param>
/// <param name="CountOn">The margin to count on as it is shown.</param>
/// <param name="Median">The median as it is shown.</param>
/// <param name="Likely">The probability in words.</param>
/// <param name="InFileDb">The margin to count on with the house as the file has it; null where nothing is tried, or the seat or spot is not in the file.</param>
internal sealed record SeatFigure(
    string Seat, double CountOnDb, double MedianDb, double Probability, bool Passes, string CountOn, string Median, string Likely, double? InFileDb);

/// <summary>All spots compared, and which to choose.</summary>
/// <param name="Version">The house that was compared.</param>
/// <param name="Finding">Which spot is the best, in a sentence.</param>
/// <param name="Paragraphs">What <c>compare</c> says of the choice.</param>
/// <param name="Spots">The spots, best first.</param>
/// <param name="FindingInFile">The same sentence for the house as its file has it; null where nothing is tried.</param>
internal sealed record ComparisonMessage(int Version, string Finding, IReadOnlyList<string> Paragraphs, IReadOnlyList<SpotFigures> Spots, string? FindingInFile)
    : Message("comparison");

/// <summary>One spot with all its seats, best spot first.</summary>
internal sealed record SpotFigures(string Spot, string Level, string Passing, string Weakest, string Likely, bool PassesAll, IReadOnlyList<SeatFigure> Seats);

/// <summary>What each spot asks for in picture cables, best spot first; of none where the house has no display.</summary>
/// <param name="Version">The house it was planned for.</param>
/// <param name="Spots">The spots.</param>
/// <param name="Note">Which spots need fewer new runs for as many seats; empty for none.</param>
internal sealed record CablesMessage(int Version, IReadOnlyList<SpotCables> Spots, string Note) : Message("cables");

/// <summary>One spot's cables: the columns of <c>compare</c>, and the runs in words.</summary>
internal sealed record SpotCables(
    string Spot, int NewRuns, string ToBuy, int Holes, string Carries, bool IsComplete, string Words, IReadOnlyList<string> Runs);

/// <summary>How far some work in the background is.</summary>
internal sealed record ProgressMessage(string Job, double Share) : Message("progress");

/// <summary>What work in the background found.</summary>
internal sealed record JobMessage(string Job, int Version, string Words, IReadOnlyList<JobResult> Results, IReadOnlyList<string> Notes) : Message("job");

/// <summary>One place or remedy, with the changes that try it.</summary>
internal sealed record JobResult(string Title, string Words, string Gain, IReadOnlyList<Files.Changes.HouseChange> Changes)
{
    public int? Level { get; init; }

    public double? X { get; init; }

    public double? Y { get; init; }
}

/// <summary>Something to tell the person.</summary>
internal sealed record NoticeMessage(string Words, IReadOnlyList<string> Lines) : Message("notice");

/// <summary>The budget of one link, in words and figures, with its paths and a section.</summary>
internal sealed record LinkAnswer(string Title, string Words, string Text, IReadOnlyList<PathItem> Paths, string NotDrawn, SectionDrawing Section);

/// <summary>One path: its corners in metres, level by level and on the section.</summary>
internal sealed record PathItem(
    int Number, string Kind, double Width, string Words, string Length, string Loss, string Share, IReadOnlyList<LevelPart> Parts, IReadOnlyList<double> OnSection);

internal sealed record LevelPart(int Level, IReadOnlyList<double> Points);

/// <summary>An upright cut through spot and seat; places along it and heights, metres.</summary>
internal sealed record SectionDrawing(double[] Bounds, double[] Spot, double[] Seat)
{
    public required string Floors { get; init; }

    public required string Joists { get; init; }

    public required string Walls { get; init; }

    public required string Leaves { get; init; }

    public required string Fixtures { get; init; }

    public required IReadOnlyList<SectionName> Names { get; init; }
}

internal sealed record SectionName(string Name, double Height);

/// <summary>An answer to a request that changed something, or could not.</summary>
internal sealed record Answer(bool Ok, string Words)
{
    public int? Version { get; init; }

    public IReadOnlyList<string>? Lines { get; init; }
}
