using LinkMargin.Engine.Fields;
using LinkMargin.Plots.Plans;

namespace LinkMargin.Plots.Maps;

/// <summary>One map of a sheet; its field says which spot and which level it belongs to.</summary>
/// <param name="Field">The margin over the level.</param>
/// <param name="Seats">The seats on that level with their margins.</param>
public sealed record SheetMap(Field Field, IReadOnlyList<SeatMark> Seats)
{
    /// <summary>
    /// The margin that ground below the required one is hatched by; null where it is that of <see cref="Field"/>. On the same
    /// grid.
    /// </summary>
    public Field? Hatched { get; init; }
}
