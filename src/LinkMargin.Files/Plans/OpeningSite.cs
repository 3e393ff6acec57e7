namespace LinkMargin.Files.Plans;

/// <summary>A stretch of wall an opening may stand in.</summary>
/// <param name="Wall">Position of the wall among the level's walls.</param>
/// <param name="Clear">The stretch, metres from the wall's start.</param>
/// <param name="SideFromMetres">
/// Where the stretch begins along what <c>at</c> counts on: 0 for a single stretch, more where a side has several.
/// </param>
internal readonly record struct OpeningSite(int Wall, Span Clear, double SideFromMetres)
{
    /// <summary>The values of <c>at</c> that put an opening of this width inside; its length is below zero if none do.</summary>
    internal Span AtRange(double widthMetres) => new(SideFromMetres, SideFromMetres + Clear.Length - widthMetres);
}
