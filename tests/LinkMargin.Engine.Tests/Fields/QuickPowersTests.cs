using CsCheck;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Fields;

/// <summary>Cells of a console that is being moved: computed, or between others that are about alike.</summary>
public sealed class QuickPowersTests
{
    private const int Houses = 12;
    private const double CellMetres = 0.25, HandsMetres = 0.7;

    private static readonly Gen<(House House, int Level)> HouseAndLevel =
        from house in RoomedHouse.Any.Where(house => house.Spots.Count > 0)
        from level in Gen.Int[0, house.Levels.Count - 1]
        select (house, level);

    /// <summary>Against every cell computed. Were regions ignored, means would reach across walls.</summary>
    [Fact, Law]
    public void A_cell_that_is_not_computed_lies_between_its_neighbours_in_the_same_region()
    {
        int cells = 0, computed = 0;
        HouseAndLevel.ForAll(
            (house, levelIndex) =>
            {
                Level level = house.Levels[levelIndex];
                double handsZ = level.ElevationMetres + HandsMetres;
                Grid grid = LevelGrid.Over(level, CellMetres);
                var model = new LinkModel(house);
                SpotModel spot = model.For(house.Spots[0]).ForMany();
                CellBlock[] regions = [.. FieldRegions.Of(model.Scene, levelIndex, grid, handsZ).Where(region => LevelGrid.IsIndoors(level, grid.CentreOf(region.West, region.South)))];
                var exact = new QuickPowers(spot, level, grid, handsZ, threads: 1);
                var rough = new QuickPowers(spot, level, grid, handsZ, threads: 1);
                exact.ComputeAll(null, CancellationToken.None);
                rough.ComputeRoughly(regions, [], null, CancellationToken.None);
                for (int cell = 0; cell < grid.Count; cell++)
                {
                    Assert.Equal(exact.IsIndoors(cell), rough.IsIndoors(cell));
                    if (!exact.IsIndoors(cell))
                    {
                        continue;
                    }

                    cells++;
                    double sum = rough[cell].Sum;
                    if (BitConverter.DoubleToInt64Bits(sum) == BitConverter.DoubleToInt64Bits(exact[cell].Sum))
                    {
                        computed++;
                        continue;
                    }

                    double[] around = [.. NeighboursInRegion(grid, regions, cell).Select(other => rough[other].Sum)];
                    Assert.NotEmpty(around);
                    Assert.InRange(sum, around.Min() * (1 - 1e-12), around.Max() * (1 + 1e-12));
                }
            },
            cases: Houses);

        // Some are left out, or it would save nothing; and some are not, or edges would be smeared.
        Assert.InRange((double)computed / cells, 0.25, 0.75);
    }

    private static IEnumerable<int> NeighboursInRegion(Grid grid, CellBlock[] regions, int cell)
    {
        (int row, int column) = Math.DivRem(cell, grid.Columns);
        CellBlock region = regions.Single(one => Holds(one, column, row));
        return
            from north in new[] { -1, 0, 1 }
            from east in new[] { -1, 0, 1 }
            where (north, east) != (0, 0) && Holds(region, column + east, row + north)
            select ((row + north) * grid.Columns) + column + east;
    }

    private static bool Holds(CellBlock block, int column, int row) => column >= block.West && column <= block.East && row >= block.South && row <= block.North;
}
