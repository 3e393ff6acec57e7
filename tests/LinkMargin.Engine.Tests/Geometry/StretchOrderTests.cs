using CsCheck;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Tests.Geometry;

public sealed class StretchOrderTests
{
    private static readonly Gen<(double From, double To)[]> Stretches =
        Gen.Select(Gen.Int[0, 30], Gen.Int[0, 8], (from, length) => ((double)from, (double)(from + length))).Array[0, 12];

    [Fact, Law]
    public void All_stretches_that_reach_into_another_are_within_it() =>
        Gen.Select(Stretches, Gen.Int[-2, 35], Gen.Int[0, 10]).ForAll((stretches, from, length) =>
        {
            (double From, double To)[] sorted = [.. stretches.OrderBy(stretch => stretch.From)];
            var order = new StretchOrder(sorted);
            int[] within = order.Within<int>([.. Enumerable.Range(0, sorted.Length)], from, from + length).ToArray();
            int[] reachInto = [.. Enumerable.Range(0, sorted.Length).Where(i => sorted[i].To > from && sorted[i].From < from + length)];
            Assert.Subset(within.ToHashSet(), reachInto.ToHashSet());

            // What lies before the first or behind the last of them is left out.
            Assert.Equal(within, Enumerable.Range(within.FirstOrDefault(), within.Length));
            Assert.True(within.Length == 0 || sorted[within[0]].To > from);
            Assert.True(within.Length == 0 || sorted[within[^1]].From < from + length);
        });
}
