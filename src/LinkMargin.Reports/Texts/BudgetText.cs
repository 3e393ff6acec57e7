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

/// <summary>A budget line by line, from the path losses to the margin; the printed values add up.</summary>
/// <param name="loaded">The house.</param>
internal sealed class BudgetText(LoadedHouse loaded)
{
    // The strongest paths are shown in detail, up to this share of the power or this number; the rest only on request.
    private const double ShareTakenApart = 0.8;
    private const int MostTakenApart = 3;

    /// <summary>The option that shows every path in detail.</summary>
    public const string AllPaths = "--all-paths";

    private readonly House house = loaded.House;
    private readonly LengthFormat lengths = loaded.Lengths;

    /// <summary>The uncertainty of the budget; null if that was not computed.</summary>
    public HouseUncertainty? Uncertainty { get; init; }

    /// <summary>Whether every path is shown in detail, not only the strongest.</summary>
    public bool WithAllPaths { get; init; }

    /// <summary>Writes a budget: the totals first, then the losses of the paths.</summary>
    public void Write(LinkBudget budget, TextWriter output, int width)
    {
        var printed = new PrintedBudget(budget);
        WordWrap.Write($"'{budget.Spot.Name}' ({LevelOf(budget.Spot.LevelIndex)}) to '{budget.Seat.Name}' ({LevelOf(budget.Seat.LevelIndex)}) in {house.Name}", output, width);
        WordWrap.Write(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Straight distance {lengths.Brief(budget.DistanceMetres)}; losses are means over the band ({budget.Frequency.Megahertz:0} MHz)."),
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
            FormattableString.Invariant($"path {i + 1}"),
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
            string words = PathWords.Of(path, house, budget.Seat);
            string heading = budget.Paths.Count == 1
                ? words
                : string.Create(CultureInfo.InvariantCulture, $"path {budget.Paths.ToList().IndexOf(path) + 1}: {words}");
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
                FormattableString.Invariant($"Details of {(takenApart.Length == 1 ? "the strongest" : $"the {takenApart.Length} strongest")} of {budget.Paths.Count} paths are shown; add {AllPaths} for all."),
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
            new Column("path", Align.Right),
            new Column("") { Wraps = true },
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
        table.Add("", "total (sum of powers)", "", Tenths.Show(printed.PathLoss), "");
        table.WriteTo(output, width);
        WordWrap.Write(Mixture(budget), output, width);
    }

    private static string Mixture(LinkBudget budget)
    {
        string delays = $"delay spread: {Tenths.Show(budget.DelaySpreadNanoseconds)} ns rms.";
        return budget.StrongestOverRestDb is double db
            ? $"Strongest path: {Tenths.Show(Math.Abs(db))} dB {(db >= 0 ? "above" : "below")} the sum of the others. {char.ToUpperInvariant(delays[0]) + delays[1..]}"
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
        Add("grip and body", d => d.HandAndBody, "dB");
        Add("polarisation mismatch", d => d.Polarisation, "dB");
        Add("path loss", d => d.PathLoss, "dB");
        table.AddRule();
        Add("received", d => d.Received, "dBm");
        Add("receiver sensitivity", d => d.Needed, "dBm");
        table.AddRule();
        Add("median margin", d => d.Margin, "dB");
        if (Uncertainty is not null)
        {
            // The uncertainty is the same in both directions, so one allowance applies to both.
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
        DecisionMargin by = Uncertainty?.AtConfidence ?? DecisionMargin.Median;
        return $"Received {Tenths.Show(printed.Worse.Received)} dBm, {(Uncertainty is null ? "median margin" : "margin to count on")} {Tenths.ShowMargin(by.MarginDb(budget), budget.RequiredDb)} dB, "
            + $"required {Tenths.ShowRequired(budget.RequiredDb)} dB: {(by.Passes(budget) ? "passes" : "does not pass")}.";
    }

    private string Verdict(LinkBudget budget)
    {
        DirectionBudget worse = budget.WorseDirection;
        DecisionMargin by = Uncertainty?.AtConfidence ?? DecisionMargin.Median;
        string verdict = $"The worse direction is {worse.From} to {worse.To}: median margin {Tenths.ShowMargin(budget.MarginDb)} dB, from the median losses of the tables.{Drawn(budget)} This is "
            + $"{Headroom.Words(budget, by)} the required {Tenths.ShowRequired(budget.RequiredDb)} dB: '{budget.Seat.Name}' "
            + $"{(by.Passes(budget) ? "passes" : "does not pass")}"
            + (Uncertainty is null ? "." : $". Probability that it passes: {UncertaintyWords.Likely(Uncertainty.ProbabilityPasses(budget))}.");
        return loaded.Tables.MeaningOf(by.MarginDb(budget)) is { } meaning
            ? $"{verdict} What to expect at {Figures.Plain(meaning.MarginDb)} dB and above: {meaning.Means}."
            : verdict;
    }

    private string Drawn(LinkBudget budget) => Uncertainty is null ? "" : string.Create(
        CultureInfo.InvariantCulture,
        $" Over {Uncertainty.Draws} draws of the unknown losses the median is {Tenths.ShowMargin(Uncertainty.With(budget).MedianDb)} dB, and with {UncertaintyWords.Confidence(Uncertainty.Confidence)} the margin is at least {Tenths.ShowMargin(Uncertainty.MarginAtConfidenceDb(budget), budget.RequiredDb)} dB: the margin to count on.");
}
