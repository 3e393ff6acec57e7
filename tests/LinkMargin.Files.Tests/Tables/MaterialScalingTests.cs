using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Tables;

public sealed class MaterialScalingTests
{
    private static readonly Gen<double> Depth = Gen.Double[0.001, 1];

    [Fact, Law]
    public void Two_depths_of_a_bulk_row_lose_what_both_lose_together() =>
        Gen.Select(Gen.Double[0, 20], Depth, Depth, Depth).ForAll((loss, thickness, a, b) =>
        {
            Material row = Row(LossForm.Bulk) with { LossDb = loss, ThicknessMetres = thickness };
            double apart = MaterialScaling.AtDepth(row, a).LossDb + MaterialScaling.AtDepth(row, b).LossDb;
            double together = MaterialScaling.AtDepth(row, a + b).LossDb;
            return Math.Abs(apart - together) <= 1e-9 * (1 + together);
        });

    [Fact]
    public void A_bulk_row_at_its_own_thickness_loses_what_it_says()
    {
        Material scaled = MaterialScaling.AtDepth(Row(LossForm.Bulk), 0.1);
        Assert.Equal((2.0, 0.5, "w-100mm"), (scaled.LossDb, scaled.SpreadDb, scaled.Name));
    }

    [Fact, Law]
    public void A_sheet_row_stays_whatever_the_depth() =>
        Depth.ForAll(depth => ReferenceEquals(Sheet, MaterialScaling.AtDepth(Sheet, depth)));

    [Theory]
    [InlineData(2.0, true)]
    [InlineData(2.01, false)]
    public void A_loss_past_the_limit_is_a_fault(double depth, bool allowed) =>
        Assert.Equal(allowed, MaterialScaling.Fault(Row(LossForm.Bulk) with { LossDb = 4 }, depth) is null);

    private static Material Sheet { get; } = Row(LossForm.Sheet);

    private static Material Row(LossForm form) => new("w", 2, 0.5, "from memory") { ThicknessMetres = 0.1, Form = form };
}
