using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Plans.Walls;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Openings;

/// <summary>Places openings in walls and reports those that do not fit.</summary>
internal sealed class OpeningPlacer(IReadOnlyList<LaidWall> walls, OpeningSites sites, PlanProblems problems)
{
    /// <summary>Every wall with its openings, in order from its start.</summary>
    internal IReadOnlyList<Wall> Place(IReadOnlyList<OpeningDraft> openings)
    {
        PlacedOpening[] placed = [.. openings.Select(Placed).OfType<PlacedOpening>()];
        ILookup<int, PlacedOpening> byWall = placed
            .GroupBy(o => o.Site)
            .SelectMany(g => OpeningSpread.Spread([.. g], walls[g.Key.Wall], problems))
            .ToLookup(o => o.Site.Wall);
        return
        [
            .. walls.Select((wall, i) =>
                Cut(wall, [.. byWall[i].OrderBy(o => o.FromMetres).ThenBy(o => o.Draft.SillMetres)])),
        ];
    }

    private PlacedOpening? Placed(OpeningDraft opening)
    {
        string label = OpeningNames.LabelOf(opening);
        if (sites.Find(opening, label) is not { } found)
        {
            return null;
        }

        OpeningSite[] candidates =
        [
            .. found.OrderByDescending(s => FitsHeight(opening, walls[s.Wall])).ThenByDescending(s => s.Clear.Length),
        ];

        // Between two rooms, or in a named wall, only the longest stretch counts; on a side of a room all stretches do.
        OpeningSite[] meant = opening.Place is OpeningPlace.SideOf ? candidates : candidates[..1];
        double widest = meant.Max(s => s.Clear.Length);
        if (opening.WidthMetres > widest + PlanLimits.RoundingMetres)
        {
            OpeningSite site = meant.First(s => s.Clear.Length == widest);
            problems.Error(
                opening.Mark,
                $"{label} is {problems.Lengths.Exact(opening.WidthMetres)} wide, but the wall {NameOf(site)} has only "
                    + $"{problems.Lengths.Exact(widest)} there; make it at most {problems.Lengths.Exact(widest)} wide");
            return null;
        }

        return SiteFor(opening, label, meant) is { } chosen && IsHeightRight(opening, label, walls[chosen.Wall])
            ? new PlacedOpening(opening, chosen, OffsetIn(chosen, opening))
            : null;
    }

    private OpeningSite? SiteFor(OpeningDraft opening, string label, OpeningSite[] meant)
    {
        if (opening.AtMetres is not { } at)
        {
            return meant[0].Clear.Length + PlanLimits.RoundingMetres >= opening.WidthMetres
                ? meant[0]
                : meant.First(s => s.Clear.Length + PlanLimits.RoundingMetres >= opening.WidthMetres);
        }

        foreach (OpeningSite site in meant)
        {
            Span range = site.AtRange(opening.WidthMetres);
            if (at >= range.From - PlanLimits.RoundingMetres && at <= range.To + PlanLimits.RoundingMetres)
            {
                return site;
            }
        }

        IEnumerable<string> ranges = meant
            .OrderBy(s => s.SideFromMetres)
            .Select(s => s.AtRange(opening.WidthMetres))
            .Where(r => r.Length >= -PlanLimits.RoundingMetres)
            .Select(r => problems.Lengths.Range(r.From, r.To))
            .Distinct();
        string what = meant.Length == 1 ? $"the wall {NameOf(meant[0])}" : "a single wall of that side";
        problems.Error(
            opening.Mark,
            $"{label} at {problems.Lengths.Exact(at)}, {problems.Lengths.Exact(opening.WidthMetres)} wide, does not lie within {what}; "
                + $"'at' may be {string.Join(", or ", ranges)}");
        return null;
    }

    private static double? OffsetIn(OpeningSite site, OpeningDraft opening) =>
        opening.AtMetres is { } at ? InRange(site, site.Clear.From + at - site.SideFromMetres, opening.WidthMetres) : null;

    /// <summary>Moves an offset that is outside only by rounding back inside.</summary>
    private static double InRange(OpeningSite site, double offset, double width) =>
        Math.Max(site.Clear.From, Math.Min(offset, site.Clear.To - width));

    private static bool FitsHeight(OpeningDraft opening, LaidWall wall) =>
        opening.SillMetres >= wall.BaseMetres - PlanLimits.RoundingMetres
        && opening.SillMetres + opening.HeightMetres <= wall.TopMetres + PlanLimits.RoundingMetres;

    private bool IsHeightRight(OpeningDraft opening, string label, LaidWall wall)
    {
        if (FitsHeight(opening, wall))
        {
            return true;
        }

        problems.Error(
            opening.Mark,
            $"{label} reaches from {problems.Lengths.Exact(opening.SillMetres)} to "
                + $"{problems.Lengths.Exact(opening.SillMetres + opening.HeightMetres)} above the floor, but its wall "
                + $"{Quote.Of(wall.Name)} from {problems.Lengths.Exact(wall.BaseMetres)} to {problems.Lengths.Exact(wall.TopMetres)}; keep it within that");
        return false;
    }

    private string NameOf(OpeningSite site) => Quote.Of(walls[site.Wall].Name);

    private Wall Cut(LaidWall wall, PlacedOpening[] openings)
    {
        for (int later = 1; later < openings.Length; later++)
        {
            for (int earlier = later - 1; earlier >= 0; earlier--)
            {
                if (IsOverlapping(openings[earlier], openings[later]))
                {
                    ReportOverlap(wall, openings[earlier], openings[later]);
                    break;
                }
            }
        }

        double length = wall.Segment.Length;
        return new Wall(wall.Name, wall.Segment.Start, wall.Segment.End, wall.BaseMetres, wall.TopMetres, wall.Material)
        {
            Openings = [.. openings.Select(o => ToOpening(o, wall, length))],
        };
    }

    private static bool IsOverlapping(PlacedOpening a, PlacedOpening b) =>
        a.SharesHeightWith(b)
        && Math.Min(a.ToMetres, b.ToMetres) - Math.Max(a.FromMetres, b.FromMetres) > PlanLimits.RoundingMetres;

    private void ReportOverlap(LaidWall wall, PlacedOpening a, PlacedOpening b)
    {
        bool isInOrder = (a.Draft.Mark.Line, a.Draft.Mark.Column).CompareTo((b.Draft.Mark.Line, b.Draft.Mark.Column)) <= 0;
        (PlacedOpening first, PlacedOpening second) = isInOrder ? (a, b) : (b, a);
        problems.Error(
            second.Draft.Mark,
            $"{OpeningNames.LabelOf(second.Draft)} and {OpeningNames.LabelOf(first.Draft)} overlap in the wall "
                + $"{Quote.Of(wall.Name)}: they take up {problems.Lengths.Range(second.FromMetres, second.ToMetres)} and "
                + $"{problems.Lengths.Range(first.FromMetres, first.ToMetres)} of it; move one with 'at' or make one narrower");
    }

    private static Opening ToOpening(PlacedOpening placed, LaidWall wall, double lengthMetres)
    {
        OpeningDraft draft = placed.Draft;
        double width = Math.Min(draft.WidthMetres, lengthMetres);
        double sill = Math.Max(draft.SillMetres, wall.BaseMetres);
        return new Opening(
            OpeningNames.NameOf(draft),
            draft.Kind,
            Math.Max(0, Math.Min(placed.FromMetres, lengthMetres - width)),
            width,
            sill,
            Math.Min(draft.HeightMetres, wall.TopMetres - sill),
            draft.Leaf,
            draft.IsOpen);
    }
}
