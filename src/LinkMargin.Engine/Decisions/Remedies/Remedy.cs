using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>Something that could be done, as edits of the house; what it gains is worked out with them.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Effort">What it asks of somebody.</param>
/// <param name="Edits">The edits, in order.</param>
public sealed record Remedy(RemedyKind Kind, Effort Effort, IReadOnlyList<HouseEdit> Edits)
{
    /// <summary>The fixture, door, zone, seat or radio it is about; empty where it is about the spot alone.</summary>
    public string Thing { get; init; } = "";

    /// <summary>The fixture that a receiver on a lead lies on; empty where it is stuck to a wall, or there is no lead.</summary>
    public string On { get; init; } = "";

    /// <summary>The level that thing is on; null where that plays no part.</summary>
    public int? LevelIndex { get; init; }

    /// <summary>The side of a fixture, or several; <see cref="BoxSides.None"/> where it is not about any.</summary>
    public BoxSides Side { get; init; }

    /// <summary>What a new panel is of; empty where there is none.</summary>
    public string Material { get; init; } = "";

    /// <summary>Length of a lead or a cable, metres; null where there is none.</summary>
    public double? LengthMetres { get; init; }

    /// <summary>Whether its cable goes to another level, or through the wall of a room.</summary>
    public bool CrossesStructure { get; init; }

    /// <summary>The house with it.</summary>
    public House ApplyTo(House house) => Edits.Aggregate(house, (edited, edit) => edit.ApplyTo(edited));
}
