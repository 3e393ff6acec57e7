using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Colours;

namespace LinkMargin.Plots.Maps;

/// <summary>Everything one map shows: one spot's margin over one level.</summary>
/// <param name="House">The house.</param>
/// <param name="Field">The margin over the level, which also says which spot and which level.</param>
/// <param name="Seats">The seats on that level with their margins.</param>
/// <param name="RequiredDb">The margin of the heaviest line; ground below it is hatched.</param>
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
    /// The margin that ground below the required one is hatched by; null where it is that of <see cref="Field"/>. On the same
    /// grid.
    /// </summary>
    public Field? Hatched { get; init; }

    /// <summary>Whether what is hatched goes by another margin than is shown.</summary>
    internal bool IsHatchedByAnother => Hatched is { } hatched && hatched != Field;

    /// <summary>The unit of axes and scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>Step between lines of equal margin and between colours, dB, above 0.</summary>
    public double StepDb { get; init; } = 5;
}

/// <summary>A seat as a map shows it.</summary>
/// <param name="Seat">The seat.</param>
/// <param name="MarginDb">Its margin to the map's spot, dB.</param>
/// <param name="Passes">Whether that is enough for this seat.</param>
public sealed record SeatMark(Seat Seat, double MarginDb, bool Passes)
{
    /// <summary>The margin by which it meets or does not, where that is another than is written, dB.</summary>
    public double? MarginAtConfidenceDb { get; init; }
}
