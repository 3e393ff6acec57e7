namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>What a remedy does.</summary>
public enum RemedyKind
{
    /// <summary>The receiver on a lead, outside what encloses the console.</summary>
    Lead,

    /// <summary>A side of what encloses the console left open, or every closed one.</summary>
    OpenSide,

    /// <summary>A side of what encloses the console made of something else, or every closed one.</summary>
    SwapSide,

    /// <summary>The console at another height in the same place.</summary>
    Raise,

    /// <summary>The console in a zone of the house file.</summary>
    Shelf,

    /// <summary>The worst seat turned.</summary>
    TurnSeat,

    /// <summary>The worst seat moved a little.</summary>
    MoveSeat,

    /// <summary>A door left open.</summary>
    OpenDoor,

    /// <summary>Controllers of another class.</summary>
    Controller,

    /// <summary>A controller on a cable at the worst seat.</summary>
    Wire,
}
