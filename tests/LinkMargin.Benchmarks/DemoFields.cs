using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;

namespace LinkMargin.Benchmarks;

/// <summary>Fields of the demo house from its first spot, all levels.</summary>
internal static class DemoFields
{
    /// <summary>The demo house.</summary>
    internal static House House() =>
        HouseFile.Parse(DemoHouse.Text, "the demo house", MaterialTablesFile.ReadBuiltIn().Tables!).House!;

    /// <summary>Computes the margin over every level.</summary>
    internal static void Compute(LinkModel model, double cellMetres, int? threads)
    {
        for (int level = 0; level < model.House.Levels.Count; level++)
        {
            FieldComputation.Compute(
                model, new FieldRequest(model.House.Spots[0], level) { CellMetres = cellMetres, Threads = threads });
        }
    }

    /// <summary>The centres of the cells of one level that such a field computes.</summary>
    internal static IEnumerable<Point3> Places(House house, double cellMetres, int level)
    {
        Grid grid = LevelGrid.Over(house.Levels[level], cellMetres);
        for (int row = 0; row < grid.Rows; row++)
        {
            for (int column = 0; column < grid.Columns; column++)
            {
                Point2 centre = grid.CentreOf(column, row);
                if (LevelGrid.IsIndoors(house.Levels[level], centre))
                {
                    yield return centre.At(house.Levels[level].ElevationMetres + FieldRequest.SofaHandsMetres);
                }
            }
        }
    }

    /// <summary>The same of all levels.</summary>
    internal static IEnumerable<Point3> Places(House house, double cellMetres) =>
        house.Levels.SelectMany((_, level) => Places(house, cellMetres, level));
}
