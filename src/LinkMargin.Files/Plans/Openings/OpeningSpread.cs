using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Plans.Walls;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Openings;

/// <summary>Places the openings of one stretch that have no written place: one is centred, several are spread evenly.</summary>
internal static class OpeningSpread
{
    /// <summary>The openings with their final places; those that do not fit are reported and omitted.</summary>
    internal static IEnumerable<PlacedOpening> Spread(
        IReadOnlyList<PlacedOpening> openings, LaidWall wall, PlanProblems problems)
    {
        PlacedOpening[] free = [.. openings.Where(o => o.OffsetMetres is null)];
        return openings
            .Where(o => o.OffsetMetres is not null)
            .Concat(Rows(free).SelectMany(row => SpreadRow(row, wall, problems)));
    }

    /// <summary>Groups openings that share some height; a light above a door does not push the door aside.</summary>
    private static IEnumerable<PlacedOpening[]> Rows(PlacedOpening[] openings)
    {
        // From the lowest sill up, a row continues while the next opening starts below the highest top so far.
        List<PlacedOpening> row = [];
        double top = double.NegativeInfinity;
        foreach (PlacedOpening opening in openings.OrderBy(o => o.Draft.SillMetres))
        {
            if (row.Count > 0 && opening.Draft.SillMetres > top - PlanLimits.RoundingMetres)
            {
                yield return InWrittenOrder(row);
                row.Clear();
            }

            row.Add(opening);
            top = Math.Max(top, opening.Draft.SillMetres + opening.Draft.HeightMetres);
        }

        if (row.Count > 0)
        {
            yield return InWrittenOrder(row);
        }
    }

    private static PlacedOpening[] InWrittenOrder(IEnumerable<PlacedOpening> row) =>
        [.. row.OrderBy(o => o.Draft.Mark.Line).ThenBy(o => o.Draft.Mark.Column)];

    private static IEnumerable<PlacedOpening> SpreadRow(PlacedOpening[] row, LaidWall wall, PlanProblems problems)
    {
        Span clear = row[0].Site.Clear;
        double total = row.Sum(o => o.Draft.WidthMetres);
        double space = (clear.Length - total) / (row.Length + 1);
        if (space < -PlanLimits.RoundingMetres)
        {
            problems.Error(
                row[^1].Draft.Mark,
                FormattableString.Invariant($"{OpeningNames.LabelOf(row[^1].Draft)} is one of {row.Length} openings that are together ")
                    + $"{problems.Lengths.Exact(total)} wide, but the wall {Quote.Of(wall.Name)} has only {problems.Lengths.Exact(clear.Length)} for them; "
                    + "make them narrower or remove one");
            yield break;
        }

        double from = clear.From;
        foreach (PlacedOpening opening in row)
        {
            from += space;
            yield return opening with { OffsetMetres = from };
            from += opening.Draft.WidthMetres;
        }
    }
}

/// <summary>An opening assigned to a wall.</summary>
/// <param name="Draft">The opening as written.</param>
/// <param name="Site">The stretch of wall it is in.</param>
/// <param name="OffsetMetres">From the wall's start to the nearer jamb, metres; null until it is spread or centred.</param>
internal sealed record PlacedOpening(OpeningDraft Draft, OpeningSite Site, double? OffsetMetres)
{
    /// <summary>From the wall's start to the nearer jamb; only for an opening with a final place.</summary>
    internal double FromMetres =>
        OffsetMetres ?? throw new InvalidOperationException("The opening has not been given its place in the wall yet.");

    /// <summary>From the wall's start to the farther jamb.</summary>
    internal double ToMetres => FromMetres + Draft.WidthMetres;

    /// <summary>Whether the two overlap in height.</summary>
    internal bool SharesHeightWith(PlacedOpening other) =>
        Math.Min(Draft.SillMetres + Draft.HeightMetres, other.Draft.SillMetres + other.Draft.HeightMetres)
            - Math.Max(Draft.SillMetres, other.Draft.SillMetres) > PlanLimits.RoundingMetres;
}
