using CsCheck;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Tests.Geometry;

public sealed class StretchOrderTests
{
    private static readonly Gen<(double From, double To)[]> Stretches =
        Gen.Select(Gen.Int[0, 30], Gen.Int[0, 8], (from, length) => ((double)from, (double)(from + length))).Array[0, 12];

    [Fact, Law]
    public void Between_its_two_numbers_lie_all_stretches_that_reach_into_another() =>
        Gen.Select(Stretches, Gen.Int[-2, 35], Gen.Int[0, 10]).ForAll((stretches, from, length) =>
        {
            (double From, double To)[] sorted = [.. stretches.OrderBy(stretch => stretch.From)];
            var order = new StretchOrder(sorted);
            int first = order.FirstBeyond(from), end = order.StartBefore(from + length);
            for (int i = 0; i < sorted.Length; i++)
            {
                bool reachesInto = sorted[i].To > from && sorted[i].From < from + length;
                Assert.True(!reachesInto || (i >= first && i < end));
            }

            // What lies before or behind all others is left out.
            Assert.True(first == sorted.Length || sorted[first].To > from);
            Assert.True(end == 0 || sorted[end - 1].From < from + length);
        });
}
