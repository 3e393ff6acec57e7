using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>
/// The walls of one level: loose segments, or a grid of rooms whose walls share corners, stand against each other in the
/// shape of a T, or run through each other.
/// </summary>
internal static class RandomWalls
{
    private const double ShortestMetres = 0.05;

    private static readonly Gen<(Point2 Start, Point2 End)[]> Loose =
        Gen.Select(RandomPlace.OnPlan, RandomPlace.OnPlan).Array[0, 7];

    private static readonly Gen<(Point2 Start, Point2 End)[]> Rooms =
        from corner in RandomPlace.OnPlan
        from widths in RandomPlace.Metres(10, 35).Array[1, 3]
        from depths in RandomPlace.Metres(10, 35).Array[1, 3]
        from manner in Gen.Int[0, 2]
        select GridOfRooms(Cuts(corner.X, widths), Cuts(corner.Y, depths), manner);

    private static readonly Gen<WallDress> Dress =
        from material in RandomMaterial.OfASheet
        from partial in Gen.Int[0, 4]
        from edge in Gen.Double[0.2, 0.9]
        from openings in OpeningDress.Any.Array[0, 2]
        select new WallDress(material, partial, edge, openings);

    /// <summary>Walls of a level of a clear height.</summary>
    internal static Gen<Wall[]> Of(double heightMetres) =>
        from loose in Loose
        from rooms in Rooms
        from which in Gen.Int[0, 3]
        let lines = Chosen(which, loose, rooms)
        from dresses in Dress.Array[lines.Length]
        select lines.Zip(dresses, (line, dress) => (line, dress))
            .Select((w, i) => w.dress.On($"wall {i}", w.line.Start, w.line.End, heightMetres))
            .ToArray();

    private static (Point2 Start, Point2 End)[] Chosen(
        int which, (Point2 Start, Point2 End)[] loose, (Point2 Start, Point2 End)[] rooms) =>
        [.. (which == 0 ? loose : which == 1 ? [.. loose, .. rooms] : rooms)
            .Where(line => line.Start.DistanceTo(line.End) > ShortestMetres)];

    private static double[] Cuts(double first, double[] steps)
    {
        var cuts = new List<double> { first };
        foreach (double step in steps)
        {
            cuts.Add(cuts[^1] + step);
        }

        return [.. cuts];
    }

    // 0: every side of every room by itself; 1: outer walls whole, inner sides by themselves; 2: all lines whole.
    private static (Point2 Start, Point2 End)[] GridOfRooms(double[] xs, double[] ys, int manner)
    {
        var lines = new List<(Point2 Start, Point2 End)>();
        for (int i = 0; i < xs.Length; i++)
        {
            bool whole = manner == 2 || (manner == 1 && (i == 0 || i == xs.Length - 1));
            lines.AddRange(Stretches(ys, whole).Select(s => (new Point2(xs[i], s.From), new Point2(xs[i], s.To))));
        }

        for (int j = 0; j < ys.Length; j++)
        {
            bool whole = manner == 2 || (manner == 1 && (j == 0 || j == ys.Length - 1));
            lines.AddRange(Stretches(xs, whole).Select(s => (new Point2(s.From, ys[j]), new Point2(s.To, ys[j]))));
        }

        return [.. lines];
    }

    private static IEnumerable<(double From, double To)> Stretches(double[] cuts, bool whole) =>
        whole ? [(cuts[0], cuts[^1])] : cuts.Zip(cuts.Skip(1));
}
