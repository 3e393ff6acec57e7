using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Fields;

public sealed class FieldSummaryTests
{
    [Fact]
    public void Counts_only_cells_that_were_computed()
    {
        FieldSummary? summary = FieldSummary.Of(Of(double.NaN, 9.99, 10, 25, -3, double.NaN), requiredDb: 10);
        Assert.Equal(new FieldSummary(4, -3, 25, 0.5), summary);
    }

    [Fact]
    public void Is_nothing_where_no_cell_was_computed()
    {
        Assert.Null(FieldSummary.Of(Of(double.NaN, double.NaN), 10));
        Assert.Null(FieldSummary.Of(Of(), 10));
    }

    private static Field Of(params double[] marginDb) =>
        new(new Spot("spot", 0, default, 1), 0, 0.7, new Grid(default, 0.1, marginDb.Length, 1), marginDb);
}
