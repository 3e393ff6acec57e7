using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace LinkMargin.Files.Plans;

/// <summary>Checks whether a plan is small enough to be laid out in bounded time.</summary>
internal static class PlanSize
{
    /// <summary>Reports if a level has more walls than allowed.</summary>
    internal static bool IsWithin(int walls, PlanDraft draft, PlanProblems problems)
    {
        if (walls <= PlanLimits.MostWalls)
        {
            return true;
        }

        problems.Error(
            MarkOf(draft),
            FormattableString.Invariant(
                $"level {Quote.Of(draft.LevelName)} has {walls} walls, more than the allowed {PlanLimits.MostWalls}; ")
                + "remove detail or split it into levels");
        return false;
    }

    /// <summary>Reports if too many things lie within a wall's thickness of each other; stops counting at the limit.</summary>
    internal static bool IsSparse(string what, IReadOnlyList<Envelope> boxes, PlanDraft draft, PlanProblems problems)
    {
        STRtree<int> tree = new();
        for (int i = 0; i < boxes.Count; i++)
        {
            tree.Insert(boxes[i], i);
        }

        PairCounter counter = new();
        foreach (Envelope box in boxes)
        {
            Envelope around = box.Copy();
            around.ExpandBy(PlanLimits.ThickestWallMetres);
            tree.Query(around, counter);
            if (counter.Pairs > 2L * PlanLimits.MostPairs)
            {
                problems.Error(
                    MarkOf(draft),
                    FormattableString.Invariant(
                        $"level {Quote.Of(draft.LevelName)} has more than {PlanLimits.MostPairs} pairs of {what} that ")
                        + $"overlap, cross or lie within {problems.Lengths.Exact(PlanLimits.ThickestWallMetres)}; check the numbers it was drawn from");
                return false;
            }
        }

        return true;
    }

    private static Mark MarkOf(PlanDraft draft) => draft.Rooms.Count > 0 ? draft.Rooms[0].Mark : draft.Walls[0].Mark;

    private sealed class PairCounter : NetTopologySuite.Index.IItemVisitor<int>
    {
        internal long Pairs { get; private set; }

        public void VisitItem(int item) => Pairs++;
    }
}
