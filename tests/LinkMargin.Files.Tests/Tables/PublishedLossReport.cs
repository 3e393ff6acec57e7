using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Tables;
using Xunit.Abstractions;

namespace LinkMargin.Files.Tests.Tables;

/// <summary>
/// Prints what the shipped tables give beside published figures for the same or the nearest construction. Nothing in the tables
/// is adjusted to the gaps. They must be as large as the tables themselves say: no row lies farther from a published figure than
/// two of its own standard deviations, and two thirds of them lie within one.
/// </summary>
public sealed class PublishedLossReport(ITestOutputHelper output)
{
    private const int Document = 0, Item = 1, Constant = 2, Slope = 3, Table = 4, Row = 5;

    // A sheet that lets nothing through is stated by what gets round it, 26 dB at most (head of materials.yaml), so a published
    // loss of the sheet alone counts up to there.
    private const double MostRoundASheetDb = 26;

    private static readonly double Gigahertz = Band.Bluetooth.Equivalent.Gigahertz;
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;

    [Fact]
    public void Stands_our_figures_beside_published_ones()
    {
        output.WriteLine("published                                            dB   ours                        dB   gap   45 deg across joists");
        string[][] rows = [.. Rows()];
        Assert.True(rows.Length >= 29, $"{rows.Length} published figures");
        int within = 0;
        foreach (string[] row in rows)
        {
            double published = Number(row[Constant]) + (Number(row[Slope]) * Gigahertz);
            bool isFloor = row[Table] != "materials";
            double ours = isFloor ? FloorDb(row[Row], 0) : Tables.Materials[row[Row]].LossDb;
            double? slanted = isFloor ? FloorDb(row[Row], 45) : null;
            double spread = isFloor ? FloorSpreadDb(row[Row]) : Tables.Materials[row[Row]].SpreadDb;
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{row[Document],-9} {row[Item],-36} {published,9:0.0}   {row[Row],-22} {ours,7:0.0} {ours - published,5:+0.0;-0.0;0.0}   {slanted:0.0}"));

            // Figures of floors are means over slanting paths too: from head on to 45 degrees across the joists.
            double atConfidence = Math.Min(published, MostRoundASheetDb);
            double gap = Math.Max(0, Math.Max(ours - atConfidence, atConfidence - (slanted ?? ours)));
            Assert.True(gap <= 2 * spread, $"{row[Item]} {atConfidence} dB ({row[Document]}), {row[Row]} {ours} dB: {gap} dB apart, spread {spread} dB");
            within += gap <= spread ? 1 : 0;
        }

        Assert.True(3 * within >= 2 * rows.Length, $"{within} of {rows.Length} within one standard deviation");
    }

    // Layers differ each on its own.
    private static double FloorSpreadDb(string name) => Math.Sqrt(Tables.BuildUps[name].Layers
        .SelectMany(layer => new[] { layer.Material?.SpreadDb ?? 0, layer.Joists?.Material.SpreadDb ?? 0 })
        .Sum(spread => spread * spread));

    /// <summary>All layers, and the joists at the mean over where they may lie.</summary>
    private static double FloorDb(string name, double degreesAcross)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(degreesAcross));
        double loss = 0;
        foreach (FloorLayer layer in Tables.BuildUps[name].Layers)
        {
            loss += layer.Material?.LossDb ?? 0;
            if (layer.Joists is { } ribs)
            {
                double share = RibShare.Covered(0.3, 0, sin, cos, 0, new RibRow(ribs.WidthMetres, ribs.DepthMetres, ribs.SpacingMetres), null);
                loss += CrossingLoss.Db(ObstacleKind.Joists, share, ribs.Material.LossDb);
            }
        }

        return loss;
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static IEnumerable<string[]> Rows() =>
        File.ReadLines(System.IO.Path.Combine(AppContext.BaseDirectory, "reference", "penetration-losses.csv"))
            .Where(line => line.Length > 0 && line[0] != '#')
            .Skip(1)
            .Select(line => line.Split(','));
}
