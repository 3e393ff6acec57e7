namespace LinkMargin.Engine.Geometry;

/// <summary>Which of many outlines a place on a plan may lie in or near: a grid of blocks, each with the outlines that come near it.</summary>
internal sealed class PlacesOfOutlines
{
    // Beyond a few hundred blocks to a side they are smaller than any room.
    private const int MostBlocksAside = 256;

    private readonly Point2 least;
    private readonly double columnsEachMetre;
    private readonly double rowsEachMetre;
    private readonly int aside; // blocks to each side
    private readonly int[][] near; // of each block, the numbers of outlines, ascending

    /// <summary>Sorts outlines into blocks.</summary>
    /// <param name="outlines">The outlines.</param>
    /// <param name="marginMetres">An outline this close to a block is near it.</param>
    internal PlacesOfOutlines(IReadOnlyList<Polygon> outlines, double marginMetres)
    {
        aside = Math.Clamp((int)Math.Ceiling(Math.Sqrt(outlines.Count)), 1, MostBlocksAside);
        near = new int[aside * aside][];
        Array.Fill(near, []);
        if (outlines.Count == 0)
        {
            return;
        }

        var margin = new Point2(marginMetres, marginMetres);
        least = new Point2(outlines.Min(o => o.Least.X), outlines.Min(o => o.Least.Y)) - margin;
        Point2 size = new Point2(outlines.Max(o => o.Greatest.X), outlines.Max(o => o.Greatest.Y)) + margin - least;
        (columnsEachMetre, rowsEachMetre) = (aside / size.X, aside / size.Y);
        var filled = new List<int>?[near.Length];
        for (int i = 0; i < outlines.Count; i++)
        {
            Point2 low = outlines[i].Least - margin, high = outlines[i].Greatest + margin;
            for (int row = Row(low.Y); row <= Row(high.Y); row++)
            {
                for (int column = Column(low.X); column <= Column(high.X); column++)
                {
                    (filled[(row * aside) + column] ??= []).Add(i);
                }
            }
        }

        for (int block = 0; block < near.Length; block++)
        {
            near[block] = filled[block]?.ToArray() ?? [];
        }
    }

    /// <summary>The numbers of the outlines that a place may lie in or closer to than the margin, ascending; others may be among them.</summary>
    internal ReadOnlySpan<int> Near(Point2 place) => near[(Row(place.Y) * aside) + Column(place.X)];

    // Monotonic, so a place between two others is in a block between theirs; outside, that of the edge.
    private int Column(double x) => (int)Math.Clamp((x - least.X) * columnsEachMetre, 0, aside - 1);

    private int Row(double y) => (int)Math.Clamp((y - least.Y) * rowsEachMetre, 0, aside - 1);
}
