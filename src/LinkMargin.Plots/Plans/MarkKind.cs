namespace LinkMargin.Plots.Plans;

/// <summary>What a mark on a plan stands for; decides its shape.</summary>
internal enum MarkKind
{
    /// <summary>A seat that has the margin it asks for.</summary>
    SeatPasses,

    /// <summary>A seat that has not.</summary>
    SeatBelow,

    /// <summary>A seat on a plan without margins.</summary>
    SeatPlain,

    /// <summary>A spot on the level drawn.</summary>
    SpotHere,

    /// <summary>A spot on another level, seen through the floor.</summary>
    SpotElsewhere,

    /// <summary>A place to take a reading at.</summary>
    Measurement,
}
