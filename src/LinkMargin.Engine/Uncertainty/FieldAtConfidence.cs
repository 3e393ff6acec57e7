using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// The margin to count on over a level. What parts it from the plain margin changes slowly within a room, so it is drawn at
/// cells half a metre apart, or a metre for a field that is not exact itself, and carried over between them within each room.
/// </summary>
public static class FieldAtConfidence
{
    private const double ApartMetres = 0.5;
    private const double FartherApartMetres = 1;

    /// <summary>Takes off a field what makes it the margin to count on.</summary>
    /// <param name="model">The house, ready.</param>
    /// <param name="field">The margin at the tables' losses.</param>
    /// <param name="basis">How uncertain the figures are.</param>
    /// <param name="confidence">How often a margin that is counted on is exceeded, above 0 and below 1.</param>
    public static Field Of(LinkModel model, Field field, UncertaintyBasis basis, double confidence)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(basis);
        Grid grid = field.Grid;
        Level level = model.House.Levels[field.LevelIndex];
        var carried = new CarriedWithinRooms(level, grid, cell => !double.IsNaN(field.MarginDb[cell]), field.Stage == FieldStage.Exact ? ApartMetres : FartherApartMetres);
        Point3[] hands = [.. carried.Cells.Select(cell => carried.CentreOf(cell).At(level.ElevationMetres + field.HandsMetres))];
        var stored = StoredPaths.Of(model, field.Spot, hands);
        var draws = new LinkDraws(stored, model.Radios, basis);
        double[] none = new double[stored.Parameters.Count], cushion = new double[hands.Length];
        Parallel.For(0, hands.Length, i =>
            cushion[i] = draws.Of(stored.Links[i]).ExceededDb(confidence) - (model.Radios.GreatestLossDb - stored.Links[i].PathLossDb(none)));
        double[] counted = [.. field.MarginDb];
        Parallel.For(0, grid.Rows, row =>
        {
            for (int cell = row * grid.Columns; cell < (row + 1) * grid.Columns; cell++)
            {
                if (!double.IsNaN(counted[cell]))
                {
                    counted[cell] += carried.WeightsAt(cell).Sum(one => one.Weight * cushion[one.Known]);
                }
            }
        });
        return field with { MarginDb = counted };
    }
}
