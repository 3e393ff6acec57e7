using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>The tree finds what a look at every box finds, on both sides of each full fan of eight.</summary>
public sealed class PlanTreeTests
{
    private static readonly Gen<Point2> Place = Gen.Select(
        Gen.Int[-20, 20].Select(i => i / 2.0), Gen.Double[-10, 10], Gen.Bool, (a, b, swap) => swap ? new Point2(a, b) : new Point2(b, a));

    // Boxes of walls are often without width; some lie on top of each other.
    private static readonly Gen<PlanBox> Box =
        from corner in Place
        from width in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 4])
        from height in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 4])
        from stacked in Gen.Int[0, 9]
        select stacked == 0 ? new PlanBox(1, 1, 2, 2) : new PlanBox(corner.X, corner.Y, corner.X + width, corner.Y + height);

    [Theory, Law]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(63)]
    [InlineData(64)]
    [InlineData(65)]
    [InlineData(512)]
    [InlineData(513)]
    public void Finds_every_box_a_line_meets_once_and_no_other(int count) =>
        Gen.Select(Box.Array[count], Gen.Select(Place, Place).Array[20]).ForAll(
            (boxes, lines) =>
            {
                var tree = new PlanTree(boxes);
                int[] found = new int[1];
                foreach ((Point2 from, Point2 to) in lines)
                {
                    int[] numbers = Query(tree, from, to, ref found);
                    Assert.Equal(numbers.Distinct().Count(), numbers.Length);
                    int[] surely = [.. Enumerable.Range(0, count).Where(i => Passes(boxes[i], from, to, 0))];
                    Assert.Empty(surely.Except(numbers));
                    Assert.All(numbers, i => Assert.True(Passes(boxes[i], from, to, 1e-6)));
                    Assert.Equal(numbers.Order(), QueryGroups(tree, from, to, ref found).Order());
                }
            },
            cases: count > 100 ? 20 : 100);

    private static int[] Query(PlanTree tree, Point2 from, Point2 to, ref int[] found)
    {
        int count = tree.Query(from, to, ref found); // may exchange the array for a larger one
        return found[..count];
    }

    private static IEnumerable<int> QueryGroups(PlanTree tree, Point2 from, Point2 to, ref int[] found)
    {
        int count = tree.QueryGroups(from, to, ref found);
        int[] groups = found[..count];
        return Enumerable.Range(0, count / 2).SelectMany(g => Enumerable.Range(0, PlanTree.Fan)
            .Where(lane => (groups[(2 * g) + 1] >> lane & 1) != 0)
            .Select(lane => tree.Order[(groups[2 * g] * PlanTree.Fan) + lane]));
    }

    // Clips the line by each side of the box, grown a little.
    private static bool Passes(PlanBox box, Point2 from, Point2 to, double grown)
    {
        double enter = 0, leave = 1;
        return Clip(from.X, to.X - from.X, box.Left - grown, box.Right + grown, ref enter, ref leave)
            && Clip(from.Y, to.Y - from.Y, box.Bottom - grown, box.Top + grown, ref enter, ref leave)
            && enter <= leave;
    }

    private static bool Clip(double at, double step, double least, double greatest, ref double enter, ref double leave)
    {
        if (step == 0)
        {
            return at >= least && at <= greatest;
        }

        double first = (least - at) / step, second = (greatest - at) / step;
        enter = Math.Max(enter, Math.Min(first, second));
        leave = Math.Min(leave, Math.Max(first, second));
        return true;
    }
}
