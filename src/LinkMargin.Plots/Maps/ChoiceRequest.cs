using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Plots.Maps;

/// <summary>Everything a map of the choice shows: how well off the worst seat is for a console anywhere on the floor.</summary>
/// <param name="House">The house.</param>
/// <param name="Fields">One for each level to show, its figures dB above what the worst seat asks for.</param>
/// <param name="Marks">Places to show.</param>
/// <param name="Title">One line above the maps.</param>
/// <param name="Caption">One sentence below them.</param>
public sealed record ChoiceRequest(House House, IReadOnlyList<Field> Fields, IReadOnlyList<ChoiceMark> Marks, string Title, string Caption)
{
    /// <summary>The unit of axes and scale bar.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;

    /// <summary>Step between lines and between colours, dB, above 0.</summary>
    public double StepDb { get; init; } = 5;
}
