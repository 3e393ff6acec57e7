using System.Globalization;
using LinkMargin.Cli.Commands;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Cli.Output;

/// <summary>A budget line by line, from what the ways through the house lose to the margin; the figures add up as printed.</summary>
/// <param name="loaded">The house.</param>
internal sealed class BudgetText(LoadedHouse loaded)
{
    // A way that brings less of what arrives is listed but not taken apart.
    private const double LeastShareTakenApart = 0.01;

    private readonly House house = loaded.House;
    private readonly LengthWords lengths = loaded.Lengths;

    /// <summary>Writes a budget.</summary>
    public void Write(LinkBudget budget, TextWriter output, int width)
    {
        var printed = new PrintedBudget(budget);
        output.WriteLine($"'{budget.Spot.Name}' ({LevelOf(budget.Spot.LevelIndex)}) to '{budget.Seat.Name}' ({LevelOf(budget.Seat.LevelIndex)}) in {house.Name}");
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"Straight distance {lengths.InFull(budget.DistanceMetres)}; losses are the mean over the band, that at {budget.Frequency.Megahertz:0} MHz."));
        output.WriteLine();
        WritePaths(budget, printed, output, width);
        WriteDirections(budget, printed, output, width);
        output.WriteLine();
        WordWrap.Write(Verdict(budget), output, width);
    }

    private string LevelOf(int index) => house.Levels[index].Name;

    private void WritePaths(LinkBudget budget, PrintedBudget printed, TextWriter output, int width)
    {
        PathBudget[] takenApart = [.. budget.Paths.Where(path => budget.Paths.Count == 1 || budget.ShareOf(path) >= LeastShareTakenApart)];
        if (budget.Paths.Count > 1)
        {
            WriteWays(budget, printed, output, width);
            output.WriteLine();
        }

        for (int i = 0; i < takenApart.Length; i++)
        {
            PathBudget path = takenApart[i];
            string heading = budget.Paths.Count == 1 ? PathPart.WayOf(path) : string.Create(CultureInfo.InvariantCulture, $"way {i + 1}: {PathPart.WayOf(path)}");
            new PathTable(house, lengths, path, printed).Write(heading, output, width);
            output.WriteLine();
        }

        Crossing[] crossings = [.. takenApart.SelectMany(path => path.Path.Crossings)];
        if (crossings.Length > 0)
        {
            WordWrap.Write("Angle: between the path and the surface's normal; 0 is head on.", output, width);
        }

        if (crossings.Any(PathTable.HasShare))
        {
            WordWrap.Write(
                "Share: of joists, how much of the path's width (first Fresnel zone) they cover; of solid things, the length inside "
                    + "them over the thickness their loss is stated for.",
                output,
                width);
        }

        if (crossings.Length > 0)
        {
            output.WriteLine();
        }
    }

    private void WriteWays(LinkBudget budget, PrintedBudget printed, TextWriter output, int width)
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
                PathPart.WayOf(path),
                lengths.Brief(path.Path.LengthMetres),
                Tenths.Show(printed.LossOf(path)),
                string.Create(CultureInfo.InvariantCulture, $"{100 * budget.ShareOf(path):0.0} %"));
        }

        table.AddRule();
        table.Add("", "all ways together, their powers added", "", Tenths.Show(printed.PathLoss), "");
        table.WriteTo(output, width);
    }

    private static void WriteDirections(LinkBudget budget, PrintedBudget printed, TextWriter output, int width)
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
        Add("margin", d => d.Margin, "dB");
        table.WriteTo(output, width);

        void Add(string what, Func<PrintedDirection, long> figure, string unit) =>
            table.Add([what, .. printed.Directions.Select(d => Tenths.Show(figure(d))), unit]);
    }

    private string Verdict(LinkBudget budget)
    {
        DirectionBudget worst = budget.Directions.MinBy(d => d.MarginDb)!;
        string verdict = $"The margin is {Tenths.Show(budget.MarginDb)} dB, that of {worst.From} to {worst.To}. This is "
            + $"{Headroom.Words(budget)} the {Tenths.Show(budget.RequiredDb)} dB that '{budget.Seat.Name}' asks for, so it "
            + $"{(budget.Meets ? "is met" : "is not met")}.";
        return loaded.Tables.MeaningOf(budget.MarginDb) is { } meaning
            ? $"{verdict} What to expect from {Figures.Plain(meaning.MarginDb)} dB up: {meaning.Means}."
            : verdict;
    }
}
