using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Maps;

/// <summary>The number of cells of maps, checked before anything is computed for them.</summary>
internal static class CellCount
{
    /// <summary>Refuses cells so small that a level has more of them than a map can hold.</summary>
    public static void RefuseTooMany(IEnumerable<Level> levels, double cellMetres)
    {
        foreach (Level level in levels)
        {
            try
            {
                _ = LevelGrid.Over(level, cellMetres);
            }
            catch (ArgumentOutOfRangeException)
            {
                throw new CannotBeDoneException(FormattableString.Invariant($"level '{level.Name}' would need more than {LevelGrid.MostCells} cells; choose a larger --cell"));
            }
        }
    }
}
