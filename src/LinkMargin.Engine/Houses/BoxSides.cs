namespace LinkMargin.Engine.Houses;

/// <summary>Sides of a box before it is turned.</summary>
[Flags]
public enum BoxSides
{
    /// <summary>No side.</summary>
    None = 0,

    /// <summary>Towards smaller x.</summary>
    West = 1,

    /// <summary>Towards larger x.</summary>
    East = 2,

    /// <summary>Towards smaller y.</summary>
    South = 4,

    /// <summary>Towards larger y.</summary>
    North = 8,

    /// <summary>The underside.</summary>
    Bottom = 16,

    /// <summary>The lid.</summary>
    Top = 32,
}
