using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Files.Writing;

/// <summary>A cell of a field that was computed.</summary>
/// <param name="Centre">Its centre, metres.</param>
/// <param name="MedianDb">The median margin there, dB.</param>
/// <param name="MarginAtConfidenceDb">The margin to count on there, dB.</param>
internal readonly record struct ComputedCell(Point2 Centre, double MedianDb, double MarginAtConfidenceDb)
{
    /// <summary>All of a field, cell 0 first.</summary>
    public static IEnumerable<ComputedCell> Of(Field field, Field counted)
    {
        Grid grid = field.Grid;
        for (int cell = 0; cell < grid.Count; cell++)
        {
            if (!double.IsNaN(field.MarginDb[cell]))
            {
                yield return new(grid.CentreOf(cell % grid.Columns, cell / grid.Columns), field.MarginDb[cell], counted.MarginDb[cell]);
            }
        }
    }
}
