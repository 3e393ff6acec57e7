using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Colours;

namespace LinkMargin.Plots.Maps;

/// <summary>Everything a sheet of maps shows: all spots, best first, over all levels in one range of colours.</summary>
/// <param name="House">The house.</param>
/// <param name="Maps">Its maps; spots stand in the order in which they come first here, and a spot and level without one is left blank.</param>
/// <param name="RequiredDb">The margin of the heaviest line; ground below it is hatched.</param>
/// <param name="Range">Ends of the colour scale.</param>
/// <param name="Title">One line above.</param>
/// <param name="Caption">One sentence below: which console, which controller, which model.</param>
public sealed record SheetRequest(
    House House,
    IReadOnlyList<SheetMap> Maps,
    double RequiredDb,
    ColourRange Range,
    string Title,
    string Caption)
{
    /// <summary>Whether what is hatched goes by another margin than is shown.</summary>
    internal bool IsHatchedByAnother => Maps.Any(map => map.Hatched is { } hatched && hatched != map.Field);

    /// <summary>What is said of each spot below its column; none for a spot that is not here.</summary>
    public IReadOnlyList<SheetVerdict> Verdicts { get; init; } = [];

    /// <summary>The unit of axes and scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>Step between lines of equal margin and between colours, dB, above 0.</summary>
    public double StepDb { get; init; } = 5;
}

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

/// <summary>What was found for one spot of a sheet.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="Finding">The finding in a few words, written large.</param>
/// <param name="Detail">A sentence or part of one below it.</param>
public sealed record SheetVerdict(Spot Spot, string Finding, string Detail);
