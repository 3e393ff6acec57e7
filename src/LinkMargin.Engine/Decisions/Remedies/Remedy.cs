using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>Something that could be done, as edits of the house; its gain is computed with them.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Effort">The effort it takes.</param>
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

    /// <summary>What a new panel is made of; empty where there is none.</summary>
    public string Material { get; init; } = "";

    /// <summary>Length of a lead or a cable, metres; null where there is none.</summary>
    public double? LengthMetres { get; init; }

    /// <summary>Where a cable to a seat lies and what it needs; null where there is none.</summary>
    public LeadRun? Run { get; init; }

    /// <summary>Whether its cable goes to another level, or through the wall of a room.</summary>
    public bool CrossesStructure { get; init; }

    /// <summary>The house with it.</summary>
    public House ApplyTo(House house) => Edits.Aggregate(house, (edited, edit) => edit.ApplyTo(edited));
}

/// <summary>The effort that a remedy takes, least first.</summary>
public enum Effort
{
    /// <summary>Nothing to buy and nothing to build.</summary>
    Free,

    /// <summary>Something to carry or to put up.</summary>
    Small,

    /// <summary>Something to buy.</summary>
    Buy,

    /// <summary>Something to buy and a cable to lay.</summary>
    Cable,
}

/// <summary>What a remedy does.</summary>
public enum RemedyKind
{
    /// <summary>The receiver on a lead, outside the fixture that the console is in.</summary>
    Lead,

    /// <summary>A side of the fixture that the console is in left open, or every closed one.</summary>
    OpenSide,

    /// <summary>A side of the fixture that the console is in made of another material, or every closed one.</summary>
    SwapSide,

    /// <summary>The console at another height in the same place.</summary>
    Raise,

    /// <summary>The console in a zone of the house file.</summary>
    Shelf,

    /// <summary>The weakest seat turned.</summary>
    TurnSeat,

    /// <summary>The weakest seat moved a little.</summary>
    MoveSeat,

    /// <summary>A door left open.</summary>
    OpenDoor,

    /// <summary>Controllers of another class.</summary>
    Controller,

    /// <summary>A controller on a cable at the weakest seat.</summary>
    Wire,
}
