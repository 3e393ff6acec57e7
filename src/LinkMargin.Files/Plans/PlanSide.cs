namespace LinkMargin.Files.Plans;

/// <summary>A side of a room on the plan; north is towards larger y.</summary>
internal enum PlanSide
{
    /// <summary>Larger y.</summary>
    North,

    /// <summary>Larger x.</summary>
    East,

    /// <summary>Smaller y.</summary>
    South,

    /// <summary>Smaller x.</summary>
    West,
}
