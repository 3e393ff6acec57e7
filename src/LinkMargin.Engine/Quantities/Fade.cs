namespace LinkMargin.Engine.Quantities;

/// <summary>How one thing takes the place of another by degrees, without a jump and without a kink at either end.</summary>
internal static class Fade
{
    /// <summary>The cubic through 0 and 1 that is level at both: 3t² − 2t³.</summary>
    /// <param name="way">How far along it is, t; below 0 counts as 0 and above 1 as 1.</param>
    internal static double In(double way)
    {
        double t = Math.Clamp(way, 0, 1);
        return t * t * (3 - (2 * t));
    }
}
