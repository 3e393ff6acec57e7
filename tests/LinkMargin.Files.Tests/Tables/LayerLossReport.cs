using System.Globalization;
using System.Text.RegularExpressions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Tables;
using Xunit.Abstractions;

namespace LinkMargin.Files.Tests.Tables;

/// <summary>
/// Prints, for each row that is built of layers, what the slab method alone makes of them beside the loss in the row. The
/// gap is what studs, joints, fixings and damp add in a real house, and the method's own error; nothing is tuned to it.
/// </summary>
public sealed partial class LayerLossReport(ITestOutputHelper output)
{
    /// <summary>A source that cites what the slab method gives prints one decimal.</summary>
    [Fact]
    public void Gives_the_slab_figures_that_sources_cite()
    {
        (Material Row, string Cited)[] cited =
        [
            .. from row in MaterialTablesFile.ReadBuiltIn().Tables!.Materials.Values
               let match = SlabFigure().Match(row.Source)
               where match.Success && row.Layers.Count > 0
               select (row, match.Groups[1].Value),
        ];
        Assert.True(cited.Length >= 12, $"{cited.Length} sources cite a slab");
        Assert.All(cited, row => Assert.Equal(
            double.Parse(row.Cited, CultureInfo.InvariantCulture),
            new LayeredPanel(row.Row.Layers, Band.Bluetooth).At(0).TransmissionLossDb,
            0.0501));
    }

    [Fact]
    public void Stands_the_layers_beside_the_loss_of_each_row()
    {
        output.WriteLine("row                         row   slab at 0    30    45    60 deg   spread by tolerance");
        Material[] rows = [.. MaterialTablesFile.ReadBuiltIn().Tables!.Materials.Values.Where(m => m.Layers.Count > 0)];
        Assert.NotEmpty(rows);
        foreach (Material row in rows)
        {
            LayeredPanel panel = new(row.Layers, Band.Bluetooth);
            double[] losses = [.. new double[] { 0, 30, 45, 60 }.Select(angle => panel.At(angle).TransmissionLossDb)];
            Assert.All(losses, loss => Assert.InRange(loss, 0, LayeredSlab.GreatestLossDb));
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{row.Name,-26} {row.LossDb,4:0.0} {losses[0],11:0.0} {losses[1],5:0.0} {losses[2],5:0.0} {losses[3],5:0.0} {panel.At(0).ToleranceSpreadDb,20:0.0}"));
        }
    }

    [GeneratedRegex(@"P\.2040-3 slab: ([0-9.]+) dB")]
    private static partial Regex SlabFigure();
}
