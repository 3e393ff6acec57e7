using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Tables;
using Xunit.Abstractions;

namespace LinkMargin.Files.Tests.Tables;

/// <summary>
/// Prints what the shipped tables give beside published figures for the same or the nearest construction. The gaps are
/// reported and nothing is tuned to them, so the only check is that there is something finite to report.
/// </summary>
public sealed class PublishedLossReport(ITestOutputHelper output)
{
    private const int Document = 0, Item = 1, Constant = 2, Slope = 3, Table = 4, Row = 5;

    private static readonly double Gigahertz = Band.Bluetooth.Equivalent.Gigahertz;
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;

    [Fact]
    public void Stands_our_figures_beside_published_ones()
    {
        output.WriteLine("published                                            dB   ours                        dB   gap   45 deg across joists");
        string[][] rows = [.. Rows()];
        Assert.NotEmpty(rows);
        foreach (string[] row in rows)
        {
            double published = Number(row[Constant]) + (Number(row[Slope]) * Gigahertz);
            double ours = row[Table] == "materials" ? Tables.Materials[row[Row]].LossDb : FloorDb(row[Row], 0);
            double? slanted = row[Table] == "materials" ? null : FloorDb(row[Row], 45);
            Assert.True(double.IsFinite(published) && double.IsFinite(ours));
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{row[Document],-9} {row[Item],-36} {published,9:0.0}   {row[Row],-22} {ours,7:0.0} {ours - published,5:+0.0;-0.0;0.0}   {slanted:0.0}"));
        }
    }

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
                double share = RibShare.Covered(0.3, 0, sin, cos, 0, ribs.WidthMetres, ribs.DepthMetres, ribs.SpacingMetres, null);
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
