namespace LinkMargin.Engine.Geometry;

/// <summary>
/// How close counts as touching. People measure in round numbers, so lines through corners, jambs, sills and faces are
/// common, and rounding must not decide them: a point within a hair of an edge is on it, and on an edge the thing with
/// the greatest loss counts, once.
/// </summary>
internal static class GeometryTolerances
{
    /// <summary>
    /// Things this close touch, metres. Far smaller than anything built, and larger than the rounding of a house's coordinates
    /// (1e-14 m), even where a line grazes a surface at <see cref="ParallelSine"/>, which stretches it to 1e-9 m. So a line
    /// through the corner of two walls can never slip between them.
    /// </summary>
    internal const double SlackMetres = 1e-8;

    /// <summary>
    /// Walls that a line meets within this distance of each other are met in one place, metres. It may meet each wall of a
    /// joint one slack away from the joint.
    /// </summary>
    internal const double JointMetres = 3 * SlackMetres;

    /// <summary>
    /// Sine of the angle to a surface below which a line runs along it and does not cross it: a tenth of a millimetre in
    /// 10 m, so that the line stays within the thickness of anything built.
    /// </summary>
    internal const double ParallelSine = 1e-5;
}
