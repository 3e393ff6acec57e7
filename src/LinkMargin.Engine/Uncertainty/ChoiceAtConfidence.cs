using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// The map of the choice: for a console anywhere on a level, how far the margin to count on of its weakest seat is above or
/// below what that seat requires.
/// <para>
/// Links are computed backwards, from each seat. The difference between a seat's margin to count on and its plain margin changes
/// slowly within a room, so it is drawn at cells a metre apart and interpolated within each room, seat by seat; the weakest seat
/// is found afterwards.
/// </para>
/// <para>
/// Error against the exact margin to count on of a spot put there, at 214 random cells of 0.2 m in the demo house, on all levels
/// and at two heights: median 0.02 dB, within 0.12 dB in 95 of 100, at worst 0.5 dB (regression values of this program).
/// </para>
/// </summary>
/// <param name="model">The model of the house.</param>
/// <param name="search">The search whose choice it is.</param>
/// <param name="basis">How uncertain the figures are.</param>
/// <param name="confidence">How often the margin to count on is exceeded, above 0 and below 1.</param>
public sealed class ChoiceAtConfidence(LinkModel model, PlaceSearch search, UncertaintyBasis basis, double confidence)
{
    private const double ApartMetres = 1;

    /// <summary>The map of one level; its figures are dB above what the weakest seat requires, NaN outside every room.</summary>
    /// <param name="levelIndex">The level; 0 is the lowest.</param>
    /// <param name="heightMetres">The console's height above its floor, metres.</param>
    /// <param name="cellMetres">Side of a cell, metres.</param>
    /// <param name="best">The spot the map is about.</param>
    /// <param name="cellDone">Called from any thread for each cell; null to hear nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    public Field MapOf(
        int levelIndex, double heightMetres, double cellMetres, Spot best, Action? cellDone = null, CancellationToken cancellation = default)
    {
        Level level = model.House.Levels[levelIndex];
        Grid grid = LevelGrid.Over(level, cellMetres);
        int[] indoors = [.. Enumerable.Range(0, grid.Count).Where(i => LevelGrid.IsIndoors(level, grid.CentreOf(i % grid.Columns, i / grid.Columns)))];
        var isIndoors = new HashSet<int>(indoors);
        var carried = new CarriedWithinRooms(level, grid, isIndoors.Contains, ApartMetres);
        double[][] knownDb = AllowancesDb([.. carried.Cells.Select(PlaceOf)], cancellation), allowanceDb = new double[indoors.Length][];
        Parallel.For(0, indoors.Length, i =>
        {
            (int Known, double Weight)[] weights = carried.WeightsAt(indoors[i]);
            allowanceDb[i] = [.. search.Survey.Seats.Select((_, seat) => weights.Sum(one => one.Weight * knownDb[one.Known][seat]))];
        });
        double[] weakestDb = search.Survey.WeakestHeadroomDb([.. indoors.Select(PlaceOf)], allowanceDb, search.Threads, cellDone, cancellation);
        double[] field = new double[grid.Count];
        Array.Fill(field, double.NaN);
        for (int i = 0; i < indoors.Length; i++)
        {
            field[indoors[i]] = weakestDb[i];
        }

        return new Field(best, levelIndex, heightMetres, grid, field);

        Standing PlaceOf(int cell) => new(levelIndex, grid.CentreOf(cell % grid.Columns, cell / grid.Columns), heightMetres, "");
    }

    // What must be added to each seat's plain margin at each place to get its margin to count on, dB.
    private double[][] AllowancesDb(Standing[] places, CancellationToken cancellation)
    {
        StoredPaths stored = search.Survey.Store(places);
        var draws = new LinkDraws(stored, model.Radios, basis);
        double[] none = new double[stored.Parameters.Count];
        double[][] allowanceDb = [.. places.Select(_ => new double[search.Survey.Seats.Count])];
        Parallel.For(0, stored.Links.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            (int seat, int place) = (i / places.Length, i % places.Length);
            allowanceDb[place][seat] = draws.Of(stored.Links[i]).ExceededDb(confidence) - (model.Radios.GreatestLossDb - stored.Links[i].PathLossDb(none));
        });
        return allowanceDb;
    }
}
