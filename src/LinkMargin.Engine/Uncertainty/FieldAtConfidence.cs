using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// The margin to count on over a level. Its difference from the plain margin changes slowly within a room, so it is drawn at
/// cells half a metre apart, or a metre for a field that is not exact itself, and interpolated between them within each room.
/// </summary>
public static class FieldAtConfidence
{
    /// <summary>Turns a field of plain margins into margins to count on.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="field">The margin at the tables' losses.</param>
    /// <param name="basis">How uncertain the figures are.</param>
    /// <param name="confidence">How often the margin to count on is exceeded, above 0 and below 1.</param>
    public static Field Of(LinkModel model, Field field, UncertaintyBasis basis, double confidence) =>
        FieldAllowance.Of(model, field, basis, confidence).AddTo(field);
}

/// <summary>
/// What is added to each cell of a field to make it the margin to count on. It changes slowly with the console's position too:
/// while a console is being moved, that of a position nearby is used, and it is drawn again where the console stops.
/// </summary>
public sealed class FieldAllowance
{
    private const double ApartMetres = 0.5;
    private const double FartherApartMetres = 1;

    private readonly double[] allowanceDb; // by cell; 0 where there is no figure

    private FieldAllowance(double[] allowanceDb) => this.allowanceDb = allowanceDb;

    /// <summary>Draws it.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="field">The field it is for.</param>
    /// <param name="basis">How uncertain the figures are.</param>
    /// <param name="confidence">How often the margin to count on is exceeded, above 0 and below 1.</param>
    public static FieldAllowance Of(LinkModel model, Field field, UncertaintyBasis basis, double confidence)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(basis);
        Grid grid = field.Grid;
        Level level = model.House.Levels[field.LevelIndex];
        double apart = field.Stage == FieldStage.Exact ? ApartMetres : FartherApartMetres;
        var carried = new CarriedWithinRooms(level, grid, cell => !double.IsNaN(field.MarginDb[cell]), apart);
        Point3[] hands = [.. carried.Cells.Select(cell => carried.CentreOf(cell).At(level.ElevationMetres + field.HandsMetres))];
        var stored = StoredPaths.Of(model, field.Spot, hands);
        RadioPair radios = model.RadiosAt(field.Spot);
        var draws = new LinkDraws(stored, model.Radios, basis).With(radios);
        double[] none = new double[stored.Parameters.Count], known = new double[hands.Length];
        Parallel.For(0, hands.Length, i =>
            known[i] = draws.Of(stored.Links[i]).ExceededDb(confidence) - (radios.GreatestLossDb - stored.Links[i].PathLossDb(none)));
        double[] allowanceDb = new double[grid.Count];
        Parallel.For(0, grid.Rows, row =>
        {
            for (int cell = row * grid.Columns; cell < (row + 1) * grid.Columns; cell++)
            {
                allowanceDb[cell] = double.IsNaN(field.MarginDb[cell]) ? 0 : carried.WeightsAt(cell).Sum(one => one.Weight * known[one.Known]);
            }
        });
        return new FieldAllowance(allowanceDb);
    }

    /// <summary>The margin to count on over a field of the same cells.</summary>
    /// <exception cref="ArgumentException">The field has another number of cells.</exception>
    public Field AddTo(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.MarginDb.Count == allowanceDb.Length
            ? field with { MarginDb = [.. field.MarginDb.Zip(allowanceDb, (marginDb, db) => marginDb + db)] }
            : throw new ArgumentException($"The field has {field.MarginDb.Count} cells, not {allowanceDb.Length}.", nameof(field));
    }
}
