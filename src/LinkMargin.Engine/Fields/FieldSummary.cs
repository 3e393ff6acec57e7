namespace LinkMargin.Engine.Fields;

/// <summary>A field in a few figures.</summary>
/// <param name="Cells">How many cells were computed, at least one.</param>
/// <param name="LeastDb">The smallest margin, dB.</param>
/// <param name="GreatestDb">The largest margin, dB.</param>
/// <param name="SharePassing">The share of the cells with at least the required margin, 0 to 1.</param>
public sealed record FieldSummary(int Cells, double LeastDb, double GreatestDb, double SharePassing)
{
    /// <summary>Sums a field up; null where no cell was computed.</summary>
    /// <param name="field">The field.</param>
    /// <param name="requiredDb">The required margin, dB.</param>
    public static FieldSummary? Of(Field field, double requiredDb)
    {
        int cells = 0, passing = 0;
        double least = double.PositiveInfinity, greatest = double.NegativeInfinity;
        foreach (double marginDb in field.MarginDb)
        {
            if (double.IsNaN(marginDb))
            {
                continue;
            }

            cells++;
            passing += marginDb >= requiredDb ? 1 : 0;
            least = Math.Min(least, marginDb);
            greatest = Math.Max(greatest, marginDb);
        }

        return cells == 0 ? null : new FieldSummary(cells, least, greatest, (double)passing / cells);
    }
}
