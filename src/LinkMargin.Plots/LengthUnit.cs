namespace LinkMargin.Plots;

/// <summary>The unit lengths are written in on a picture.</summary>
public enum LengthUnit
{
    /// <summary>Metres.</summary>
    Metres,

    /// <summary>Feet and inches.</summary>
    Feet,
}
