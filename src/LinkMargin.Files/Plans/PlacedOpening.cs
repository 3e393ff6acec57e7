namespace LinkMargin.Files.Plans;

/// <summary>An opening that has found its wall.</summary>
/// <param name="Draft">The opening as written.</param>
/// <param name="Site">The stretch of wall it stands in.</param>
/// <param name="OffsetMetres">From the wall's start to the nearer jamb, metres; null until it is spread or centred.</param>
internal sealed record PlacedOpening(OpeningDraft Draft, OpeningSite Site, double? OffsetMetres)
{
    /// <summary>From the wall's start to the nearer jamb, for an opening that has its final place.</summary>
    internal double FromMetres =>
        OffsetMetres ?? throw new InvalidOperationException("The opening has not been given its place in the wall yet.");

    /// <summary>From the wall's start to the farther jamb.</summary>
    internal double ToMetres => FromMetres + Draft.WidthMetres;

    /// <summary>Whether some height is taken up by both.</summary>
    internal bool SharesHeightWith(PlacedOpening other) =>
        Math.Min(Draft.SillMetres + Draft.HeightMetres, other.Draft.SillMetres + other.Draft.HeightMetres)
            - Math.Max(Draft.SillMetres, other.Draft.SillMetres) > PlanLimits.RoundingMetres;
}
