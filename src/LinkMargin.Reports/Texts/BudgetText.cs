using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>A budget line by line, from what the ways through the house lose to the margin; the figures add up as printed.</summary>
/// <param name="loaded">The house.</param>
internal sealed class BudgetText(LoadedHouse loaded)
{
    // The strongest ways are taken apart until so much of what arrives is explained, or so many are; the rest on request.
    private const double ShareTakenApart = 0.8;
    private const int MostTakenApart = 3;

    /// <summary>The option that asks for every way.</summary>
    public const string AllPaths = "--all-paths";

    private readonly House house = loaded.House;
    private readonly LengthFormat lengths = loaded.Lengths;

    /// <summary>How sure the budget is; null where that was not worked out.</summary>
    public HouseUncertainty? Uncertainty { get; init; }

    /// <summary>Whether every way is taken apart, not the strongest alone.</summary>
    public bool WithAllPaths { get; init; }

    /// <summary>Writes a budget: first what it comes to, then what the ways lose on which it rests.</summary>
    public void Write(LinkBudget budget, TextWriter output, int width)
    {
        var printed = new PrintedBudget(budget);
        WordWrap.Write($"'{budget.Spot.Name}' ({LevelOf(budget.Spot.LevelIndex)}) to '{budget.Seat.Name}' ({LevelOf(budget.Seat.LevelIndex)}) in {house.Name}", output, width);
        WordWrap.Write(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Straight distance {lengths.Brief(budget.DistanceMetres)}; losses are the mean over the band, that at {budget.Frequency.Megahertz:0} MHz."),
            output,
            width);
        if (budget.Occupied.Count > 0)
        {
            WordWrap.Write($"With people on {OccupiedWords.List(budget.Occupied)}.", output, width);
        }

        WordWrap.Write(Sums(budget, printed), output, width);
        output.WriteLine();
        WriteDirections(budget, printed, output, width);
        output.WriteLine();
        WordWrap.Write(Verdict(budget), output, width);
        foreach (string line in CautionLines(budget))
        {
            WordWrap.Write(line, output, width);
        }
        output.WriteLine();
        WritePathSections(budget, printed, output, width);
    }

    private static IEnumerable<string> CautionLines(LinkBudget budget) => Cautions.About(
        budget.Paths.Select((path, i) => (
            FormattableString.Invariant($"way {i + 1}"),
            budget.ShareOf(path) >= LinkBudget.LeastShareOfCaution ? path.Cautions : [])));

    private string LevelOf(int index) => house.Levels[index].Name;

    private void WritePathSections(LinkBudget budget, PrintedBudget printed, TextWriter output, int width)
    {
        PathBudget[] takenApart = [.. TakenApart(budget)];
        if (budget.Paths.Count > 1)
        {
            WritePaths(budget, printed, output, width);
            output.WriteLine();
        }

        for (int i = 0; i < takenApart.Length; i++)
        {
            PathBudget path = takenApart[i];
            string way = PathWords.Of(path, house, budget.Seat);
            string heading = budget.Paths.Count == 1
                ? way
                : string.Create(CultureInfo.InvariantCulture, $"way {budget.Paths.ToList().IndexOf(path) + 1}: {way}");
            new PathTable(house, lengths, path, printed).Write(heading, output, width);
            output.WriteLine();
        }

        foreach (string paragraph in new PathLegend(takenApart).All)
        {
            WordWrap.Write(paragraph, output, width);
        }

        if (takenApart.Length < budget.Paths.Count)
        {
            WordWrap.Write(
                FormattableString.Invariant($"{(takenApart.Length == 1 ? "The strongest" : $"The {takenApart.Length} strongest")} of {budget.Paths.Count} ways {(takenApart.Length == 1 ? "is" : "are")} taken apart; 'linkmargin explain' with {AllPaths} takes all of them apart."),
                output,
                width);
        }
    }

    private IEnumerable<PathBudget> TakenApart(LinkBudget budget)
    {
        if (WithAllPaths)
        {
            return budget.Paths;
        }

        double share = 0;
        return budget.Paths.OrderByDescending(budget.ShareOf).Take(MostTakenApart)
            .TakeWhile(path => (share += budget.ShareOf(path)) - budget.ShareOf(path) < ShareTakenApart);
    }

    private void WritePaths(LinkBudget budget, PrintedBudget printed, TextWriter output, int width)
    {
        var table = new TextTable(
        [
            new Column("way", Align.Right),
            new Column("through the house") { Wraps = true },
            new Column("length", Align.Right),
            new Column("loss, dB", Align.Right),
            new Column("share", Align.Right),
        ]);
        for (int i = 0; i < budget.Paths.Count; i++)
        {
            PathBudget path = budget.Paths[i];
            table.Add(
                FormattableString.Invariant($"{i + 1}"),
                PathWords.Of(path, house, budget.Seat),
                path.Path.Kind == PathKind.Diffuse ? "" : lengths.Brief(path.Path.LengthMetres),
                Tenths.Show(printed.LossOf(path)),
                PathWords.ShareOf(budget, path));
        }

        table.AddRule();
        table.Add("", "all ways together, their powers added", "", Tenths.Show(printed.PathLoss), "");
        table.WriteTo(output, width);
        WordWrap.Write(Mixture(budget), output, width);
    }

    private static string Mixture(LinkBudget budget)
    {
        string delays = $"delays spread over {Tenths.Show(budget.DelaySpreadNanoseconds)} ns rms.";
        return budget.StrongestOverRestDb is double db
            ? $"The strongest way brings {Tenths.Show(Math.Abs(db))} dB {(db >= 0 ? "more" : "less")} than all others together; {delays}"
            : char.ToUpperInvariant(delays[0]) + delays[1..];
    }

    private void WriteDirections(LinkBudget budget, PrintedBudget printed, TextWriter output, int width)
    {
        var table = new TextTable(
        [
            new Column("budget"),
            .. budget.Directions.Select(d => new Column($"{d.From}\nto {d.To}", Align.Right)),
            new Column(""),
        ]);
        Add("transmit power", d => d.Transmit, "dBm");
        Add("antenna gains, both ends", d => d.AntennaGains, "dB");
        Add("hand and body", d => d.HandAndBody, "dB");
        Add("path loss", d => d.PathLoss, "dB");
        table.AddRule();
        Add("received", d => d.Received, "dBm");
        Add("needed by the receiver", d => d.Needed, "dBm");
        table.AddRule();
        Add("median margin", d => d.Margin, "dB");
        if (Uncertainty is not null)
        {
            // What is uncertain is uncertain both ways alike, so one allowance serves both directions.
            long allowance = Tenths.OfMargin(Uncertainty.MarginAtConfidenceDb(budget)) - Tenths.OfMargin(budget.MarginDb);
            Add("allowance for uncertainty", _ => allowance, "dB");
            table.AddRule();
            Add("margin to count on", d => d.Margin + allowance, "dB");
        }

        table.WriteTo(output, width);

        void Add(string what, Func<PrintedDirection, long> figure, string unit) =>
            table.Add([what, .. printed.Directions.Select(d => Tenths.Show(figure(d))), unit]);
    }

    private string Sums(LinkBudget budget, PrintedBudget printed)
    {
        DirectionBudget worst = budget.Directions.MinBy(d => d.MarginDb)!;
        DecisionMargin by = Uncertainty?.AtConfidence ?? DecisionMargin.Median;
        long received = printed.Directions[budget.Directions.ToList().IndexOf(worst)].Received;
        return $"Received {Tenths.Show(received)} dBm, {(Uncertainty is null ? "margin" : "margin to count on")} {Tenths.ShowMargin(by.MarginDb(budget), budget.RequiredDb)} dB, "
            + $"required {Tenths.ShowRequired(budget.RequiredDb)} dB: {(by.Passes(budget) ? "met" : "not met")}.";
    }

    private string Verdict(LinkBudget budget)
    {
        DirectionBudget worst = budget.Directions.MinBy(d => d.MarginDb)!;
        DecisionMargin by = Uncertainty?.AtConfidence ?? DecisionMargin.Median;
        string verdict = $"Every loss above is its table's median, so their sum is a median margin: {Tenths.ShowMargin(budget.MarginDb)} dB, that of {worst.From} to {worst.To}.{Drawn(budget)} This is "
            + $"{Headroom.Words(budget, by)} the {Tenths.ShowRequired(budget.RequiredDb)} dB that '{budget.Seat.Name}' asks for, so it "
            + $"{(by.Passes(budget) ? "is met" : "is not met")}"
            + (Uncertainty is null ? "." : $"; that there is as much is {UncertaintyWords.Likely(Uncertainty.ProbabilityPasses(budget))} likely.");
        return loaded.Tables.MeaningOf(by.MarginDb(budget)) is { } meaning
            ? $"{verdict} What to expect from {Figures.Plain(meaning.MarginDb)} dB up: {meaning.Means}."
            : verdict;
    }

    private string Drawn(LinkBudget budget) => Uncertainty is null ? "" : string.Create(
        CultureInfo.InvariantCulture,
        $" Of {Uncertainty.Draws} houses that could be behind the file, half have {Tenths.ShowMargin(Uncertainty.With(budget).MedianDb)} dB or more, and {UncertaintyWords.Often(Uncertainty.Confidence)} there are {Tenths.ShowMargin(Uncertainty.MarginAtConfidenceDb(budget), budget.RequiredDb)} dB or more: the margin to count on.");
}
