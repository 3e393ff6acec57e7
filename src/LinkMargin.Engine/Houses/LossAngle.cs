namespace LinkMargin.Engine.Houses;

/// <summary>At what angle a material's table loss holds.</summary>
public enum LossAngle
{
    /// <summary>For a wave that meets it square.</summary>
    HeadOn,

    /// <summary>As a mean over the angles met in buildings, as figures fitted to whole buildings are.</summary>
    Mean,
}
