using System.Globalization;
using System.Text.RegularExpressions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Tables;

/// <summary>
/// The rows of metal panels and meshes are what the formulas give for the dimensions in their own source text, so that row and
/// formula cannot drift apart.
/// </summary>
public sealed partial class MetalRowTests
{
    // Rows state the nearest half decibel; spreads the nearest half, or up to 1 dB more where other evidence lies apart.
    private const double HalfStepDb = 0.25, MoreSpreadDb = 1;

    // Nine of ten examples lie within this many standard deviations of a normal distribution.
    private const double NineOfTen = 1.645;

    private static readonly Frequency Middle = Frequency.FromMegahertz(2440);
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;

    [Fact]
    public void Are_all_rows_that_cite_a_formula() => Assert.Equal(
        [
            "blind-metal", "door-garage-steel", "door-mirror", "door-steel", "glass-wired", "mesh", "mesh-coarse", "perforated-steel",
            "plaster-metal-lath", "roof-metal", "sheet-steel",
        ],
        Tables.Materials.Values.Where(row => Citation().IsMatch(row.Source)).Select(row => row.Name).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("sheet-steel")]
    [InlineData("perforated-steel")]
    [InlineData("door-steel")]
    [InlineData("door-garage-steel")]
    [InlineData("roof-metal")]
    [InlineData("door-mirror")]
    [InlineData("blind-metal")]
    public void Panels_lose_what_passes_their_sheet_and_seams(string name)
    {
        Material row = Tables.Materials[name];
        Seam[] seams = [.. SeamText().Matches(row.Source).Select(match => new Seam(Number(match, 1), Number(match, 2) / 1000))];
        Match size = Assert.Single(SizeText().Matches(row.Source));
        double area = Number(size, 1) * Number(size, 2);
        Assert.All(seams, seam => Assert.Null(MetalSheet.SeamCaution(seam, Middle)));
        double sheetDb = SheetDb(row.Source);
        double loss = Panel(1, 1);
        Assert.InRange(row.LossDb, loss - HalfStepDb, loss + HalfStepDb);
        Assert.Equal(LossAngle.Mean, row.Angle);
        if (HeadOnText().Match(row.Source) is { Success: true } headOn)
        {
            Assert.Equal(Number(headOn, 1), MetalSheet.PanelLossHeadOnDb(area, sheetDb, Middle, seams), 0.5);
        }

        // A panel of metal reflects: it must lie on the metal side of where the loss alone decides.
        Assert.True(row.Reflects == SheetReflection.Metal || row.LossDb >= 14);
        double ends = Panel(0.5, 1.0 / 3) - Panel(1.5, 2);
        AssertSpread(row, ends, 3);

        double Panel(double length, double width) => MetalSheet.PanelLossMeanDb(
            area, sheetDb, Middle, [.. seams.Select(seam => new Seam(length * seam.LengthMetres, width * seam.WidthMetres))]);
    }

    [Theory]
    [InlineData("mesh")]
    [InlineData("mesh-coarse")]
    [InlineData("glass-wired")]
    public void Meshes_lose_what_their_pitch_and_wire_give(string name)
    {
        Material row = Tables.Materials[name];
        Match mesh = Assert.Single(MeshText().Matches(row.Source));
        double pitch = Number(mesh, 1) / 1000, radius = Number(mesh, 2) / 2000;
        Assert.Null(MetalSheet.MeshCaution(pitch, Middle));
        double loss = MetalSheet.MeshLossDb(pitch, radius, Middle);
        Assert.InRange(row.LossDb, loss - HalfStepDb, loss + HalfStepDb);
        Assert.Equal(SheetReflection.Metal, row.Reflects);
        AssertSpread(row, MetalSheet.MeshLossDb(2 * pitch / 3, radius, Middle) - MetalSheet.MeshLossDb(4 * pitch / 3, radius, Middle), 1);
    }

    [Fact]
    public void A_partition_on_metal_lath_loses_what_two_meshes_and_the_plaster_do()
    {
        Material row = Tables.Materials["plaster-metal-lath"], plaster = Tables.Materials["plaster"];
        Match mesh = Assert.Single(MeshText().Matches(row.Source));
        double passed = Decibels.ToPowerRatio(-MetalSheet.MeshLossDb(Number(mesh, 1) / 1000, Number(mesh, 2) / 2000, Middle));

        // Powers through one, and back and forth between both: T²/(1 − (1 − T)²).
        double both = -Decibels.FromPowerRatio(passed / (2 - passed));
        Assert.Equal(16.5, both, 0.1);
        double loss = both + (plaster.LossDb * 0.036 / plaster.ThicknessMetres!.Value);
        Assert.InRange(row.LossDb, loss - HalfStepDb, loss + HalfStepDb);
    }

    // Said in the head of the table.
    [Fact]
    public void An_open_hole_of_60_mm_passes_as_much_as_04_m_of_3_mm_seam() =>
        Assert.Equal(0.4, Math.PI / 4 * 0.06 * 0.06 / MetalSheet.SlitWidthMetres(0.003, Middle), 0.05);

    private static double SheetDb(string source)
    {
        if (HolesText().Match(source) is not { Success: true } holes)
        {
            return double.PositiveInfinity;
        }

        double hole = Number(holes, 1) / 1000, cell = MetalSheet.StaggeredCell(Number(holes, 2) / 1000);
        Assert.Null(MetalSheet.PerforatedCaution(hole, cell, Middle));
        double loss = MetalSheet.PerforatedLossDb(hole, cell, Number(holes, 3) / 1000, Middle);
        Assert.Equal(Number(holes, 4), loss, 0.5);
        return loss;
    }

    private static void AssertSpread(Material row, double endsDb, double otherDb)
    {
        double spread = Math.Sqrt(Math.Pow(endsDb / 2 / NineOfTen, 2) + (otherDb * otherDb));
        Assert.InRange(row.SpreadDb, spread - HalfStepDb, spread + MoreSpreadDb);
    }

    private static double Number(Match match, int group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("Otoshi|Casey|Babinet")]
    private static partial Regex Citation();

    [GeneratedRegex(@"([\d.]+) m of ([\d.]+) mm seam")]
    private static partial Regex SeamText();

    [GeneratedRegex(@"(?:round|on) ([\d.]+) m by ([\d.]+) m\b")]
    private static partial Regex SizeText();

    [GeneratedRegex(@"([\d.]+) mm holes ([\d.]+) mm apart, staggered, in ([\d.]+) mm sheet, ([\d.]+) dB alone")]
    private static partial Regex HolesText();

    [GeneratedRegex(@"([\d.]+) mm mesh of ([\d.]+) mm wire")]
    private static partial Regex MeshText();

    [GeneratedRegex(@"\(([\d.]+) dB head on\)")]
    private static partial Regex HeadOnText();
}
