using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>Other controllers.</summary>
/// <param name="Controller">Their radio.</param>
public sealed record SetController(Radio Controller) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => house with { Controller = Controller };
}

/// <summary>Another console.</summary>
/// <param name="Console">Its radio.</param>
public sealed record SetConsole(Radio Console) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => house with { Console = Console };
}
