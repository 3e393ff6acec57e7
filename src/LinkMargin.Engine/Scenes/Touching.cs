namespace LinkMargin.Engine.Scenes;

/// <summary>How near counts as touching.</summary>
internal static class Touching
{
    /// <summary>
    /// A line this near to a wall's end meets the wall, metres. Far above the rounding of coordinates of a house (1e-14 m)
    /// and far below anything built, so a line through the corner of two walls can never slip between them.
    /// </summary>
    internal const double SlackMetres = 1e-9;

    /// <summary>Two walls met at their ends within this distance along the line are one joint, metres.</summary>
    internal const double JointMetres = 1e-6;

    /// <summary>Sine of the angle between a line and a wall below which the line runs in the wall's plane and meets nothing.</summary>
    internal const double ParallelSine = 1e-12;
}
