namespace LinkMargin.Web.Protocol;

/// <summary>The seats' figures for one spot, also while it is dragged.</summary>
/// <param name="Generation">The request it answers.</param>
/// <param name="Version">The house it was computed with.</param>
/// <param name="Spot">The spot.</param>
/// <param name="Words">The result, in a sentence.</param>
/// <param name="Seats">The seats that play there.</param>
internal sealed record FiguresMessage(int Generation, int Version, string Spot, string Words, IReadOnlyList<SeatFigure> Seats) : Message("figures");

/// <summary>One seat with one spot.</summary>
/// <param name="Seat">The seat.</param>
/// <param name="CountOnDb">The margin to count on, dB.</param>
/// <param name="MedianDb">The median margin, dB.</param>
/// <param name="Probability">Probability of passing, 0 to 1.</param>
/// <param name="Passes">Whether the margin to count on reaches the required margin.</param>
/// <param name="CountOn">The margin to count on, as shown.</param>
/// <param name="Median">The median, as shown.</param>
/// <param name="Likely">The probability in words.</param>
/// <param name="InFileDb">The margin to count on with the house as in its file; null if nothing is tried, or the file lacks the seat or spot.</param>
internal sealed record SeatFigure(
    string Seat, double CountOnDb, double MedianDb, double Probability, bool Passes, string CountOn, string Median, string Likely, double? InFileDb);

/// <summary>All spots compared, and which to choose.</summary>
/// <param name="Version">The house that was compared.</param>
/// <param name="Finding">Which spot is the best, in a sentence.</param>
/// <param name="Paragraphs">The text of <c>compare</c> about the choice.</param>
/// <param name="Spots">The spots, best first.</param>
/// <param name="FindingInFile">The same sentence for the house as in its file; null if nothing is tried.</param>
internal sealed record ComparisonMessage(int Version, string Finding, IReadOnlyList<string> Paragraphs, IReadOnlyList<SpotFigures> Spots, string? FindingInFile)
    : Message("comparison");

/// <summary>One spot with all its seats.</summary>
internal sealed record SpotFigures(string Spot, string Level, int SeatsPassing, int SeatCount, string Weakest, string Likely, bool PassesAll, IReadOnlyList<SeatFigure> Seats);

/// <summary>The video cables that each spot needs, best spot first; empty if the house has no display.</summary>
/// <param name="Version">The house they were planned for.</param>
/// <param name="Spots">The spots.</param>
/// <param name="Note">Spots that need fewer new runs for as many passing seats; empty for none.</param>
internal sealed record CablesMessage(int Version, IReadOnlyList<SpotCables> Spots, string Note) : Message("cables");

/// <summary>One spot's cables: the columns of <c>compare</c>, and the runs in words.</summary>
internal sealed record SpotCables(
    string Spot, int NewRuns, string ToBuy, int Holes, string Carries, bool IsComplete, string Words, IReadOnlyList<string> Runs);

/// <summary>The progress of work in the background.</summary>
internal sealed record ProgressMessage(string Job, double Share) : Message("progress");

/// <summary>The result of work in the background.</summary>
internal sealed record JobMessage(string Job, int Version, string Words, IReadOnlyList<JobResult> Results, IReadOnlyList<string> Notes) : Message("job");

/// <summary>One place or remedy, with the changes that try it.</summary>
internal sealed record JobResult(string Title, string Words, string Gain, IReadOnlyList<Files.Changes.HouseChange> Changes)
{
    public int? Level { get; init; }

    public double? X { get; init; }

    public double? Y { get; init; }
}

/// <summary>A notice for the user.</summary>
internal sealed record NoticeMessage(string Words, IReadOnlyList<string> Lines) : Message("notice");

/// <summary>The budget of one link, in words and figures, with its paths and a section.</summary>
/// <param name="Title">The finding.</param>
/// <param name="Between">What stands between spot and seat, the greatest losses first; empty for nothing.</param>
/// <param name="Words">The figures, in words.</param>
/// <param name="Text">The budget, line by line.</param>
/// <param name="Paths">Its paths.</param>
/// <param name="NotDrawn">What is not drawn, in words.</param>
/// <param name="Section">A section through spot and seat.</param>
internal sealed record LinkAnswer(string Title, string Between, string Words, string Text, IReadOnlyList<PathItem> Paths, string NotDrawn, SectionDrawing Section);

/// <summary>One path: its corners in metres, level by level and on the section.</summary>
internal sealed record PathItem(
    int Number, string Kind, double Width, string Words, string Length, string Loss, string Share, IReadOnlyList<LevelPart> Parts, IReadOnlyList<double> OnSection);

internal sealed record LevelPart(int Level, IReadOnlyList<double> Points);

/// <summary>A vertical section through spot and seat; positions along it and heights in metres.</summary>
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

/// <summary>An answer to a request for a change: done, or refused.</summary>
internal sealed record Answer(bool Ok, string Words)
{
    public int? Version { get; init; }

    public IReadOnlyList<string>? Lines { get; init; }
}
