using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Fields;

public sealed class FieldSummaryTests
{
    [Fact]
    public void Counts_only_cells_that_were_computed()
    {
        // More cells pass than do not, one of them at just what is required.
        FieldSummary? summary = FieldSummary.Of(Of(double.NaN, 9.99, 10, 25, -3, 18, double.NaN), requiredDb: 10);
        Assert.Equal(new FieldSummary(5, -3, 25, 0.6), summary);
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
