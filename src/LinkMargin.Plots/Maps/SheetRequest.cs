using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Colours;

namespace LinkMargin.Plots.Maps;

/// <summary>Everything on a sheet of maps: all spots, best first, over all levels with one colour scale.</summary>
/// <param name="House">The house.</param>
/// <param name="Maps">Its maps; spots are in the order in which they first appear here; a missing map is left blank.</param>
/// <param name="RequiredDb">The margin of the boldest line; ground below it is hatched.</param>
/// <param name="Range">Ends of the colour scale.</param>
/// <param name="Title">One line above the maps.</param>
/// <param name="Caption">One sentence below them: which console, which controller, which model.</param>
public sealed record SheetRequest(
    House House,
    IReadOnlyList<SheetMap> Maps,
    double RequiredDb,
    ColourRange Range,
    string Title,
    string Caption)
{
    /// <summary>Whether hatching depends on another margin than the one shown.</summary>
    internal bool IsHatchedByAnother => Maps.Any(map => map.Hatched is { } hatched && hatched != map.Field);

    /// <summary>The text below each spot's column; none for a spot that is not here.</summary>
    public IReadOnlyList<SheetVerdict> Verdicts { get; init; } = [];

    /// <summary>
    /// All seats, in the order of the numbers they have in the document that the sheet is part of; null where it stands alone. Seats whose
    /// name has no room are shown by number.
    /// </summary>
    public IReadOnlyList<Seat>? SeatsByNumber { get; init; }

    /// <summary>The unit of axes and scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>Step between contour lines and colours, dB, above 0.</summary>
    public double StepDb { get; init; } = 5;

    /// <summary>How large letters on the maps are, a share of those of a sheet that is read by itself.</summary>
    public double LetterShare { get; init; } = 1;
}

/// <summary>One map of a sheet; its field gives its spot and level.</summary>
/// <param name="Field">The margin over the level.</param>
/// <param name="Seats">The seats on that level with their margins.</param>
public sealed record SheetMap(Field Field, IReadOnlyList<SeatMark> Seats)
{
    /// <summary>
    /// The margin that decides which ground is hatched; null for that of <see cref="Field"/>. On the same
    /// grid.
    /// </summary>
    public Field? Hatched { get; init; }
}

/// <summary>The finding for one spot of a sheet.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="Finding">The finding in a few words, in large letters.</param>
/// <param name="Detail">A sentence or phrase below it.</param>
public sealed record SheetVerdict(Spot Spot, string Finding, string Detail);
