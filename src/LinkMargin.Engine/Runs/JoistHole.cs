namespace LinkMargin.Engine.Runs;

/// <summary>
/// The usual rule for a hole in a sawn joist: a third of the depth, and 2 in of wood above and below (IRC R502.8.1). A figure to ask
/// with, never a permission: engineered joists have their maker's chart, and local rules decide.
/// </summary>
public static class JoistHole
{
    /// <summary>Wood that stays above and below, metres: 2 in.</summary>
    public const double EdgeMetres = 2 * 0.0254;

    /// <summary>The largest hole that the rule allows in a joist of a depth, metres; 0 where it allows none.</summary>
    public static double GreatestMetres(double depthMetres) => Math.Max(0, Math.Min(depthMetres / 3, depthMetres - (2 * EdgeMetres)));
}
