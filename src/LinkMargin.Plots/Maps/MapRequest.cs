using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Colours;

namespace LinkMargin.Plots.Maps;

/// <summary>Everything on one map: one spot's margin over one level.</summary>
/// <param name="House">The house.</param>
/// <param name="Field">The margin over the level, with the spot and the level it is for.</param>
/// <param name="Seats">The seats on that level with their margins.</param>
/// <param name="RequiredDb">The margin of the boldest line; ground below it is hatched.</param>
/// <param name="Range">Ends of the colour scale.</param>
/// <param name="Title">One line above the map.</param>
/// <param name="Caption">One sentence below it: which console, which controller, which model.</param>
public sealed record MapRequest(
    House House,
    Field Field,
    IReadOnlyList<SeatMark> Seats,
    double RequiredDb,
    ColourRange Range,
    string Title,
    string Caption)
{
    /// <summary>
    /// The margin that decides which ground is hatched; null for that of <see cref="Field"/>. On the same
    /// grid.
    /// </summary>
    public Field? Hatched { get; init; }

    /// <summary>Whether hatching depends on another margin than the one shown.</summary>
    internal bool IsHatchedByAnother => Hatched is { } hatched && hatched != Field;

    /// <summary>The unit of axes and scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>Step between contour lines and colours, dB, above 0.</summary>
    public double StepDb { get; init; } = 5;
}

/// <summary>A seat on a map.</summary>
/// <param name="Seat">The seat.</param>
/// <param name="MarginDb">Its margin to the map's spot, dB.</param>
/// <param name="Passes">Whether the seat passes.</param>
public sealed record SeatMark(Seat Seat, double MarginDb, bool Passes)
{
    /// <summary>The margin that decides whether it passes, if it is not the one shown, dB.</summary>
    public double? MarginAtConfidenceDb { get; init; }
}
