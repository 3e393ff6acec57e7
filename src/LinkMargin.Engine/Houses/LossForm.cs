namespace LinkMargin.Engine.Houses;

/// <summary>How a material's table loss applies to what is made of it.</summary>
public enum LossForm
{
    /// <summary>The loss is that of the whole thing at its own thickness: a wall, a door, a pane, a panel.</summary>
    Sheet,

    /// <summary>The loss is that of the stated thickness and grows with the length travelled inside: water, masonry, books, a body.</summary>
    Bulk,
}
