namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>
/// The strongest few diffracted paths of a link, one for each doorway or pair of doorways: the two jambs of a doorway share one
/// path (<see cref="SharedEnergy"/> sees to what others share). Which are the strongest depends on their powers alone, so a sum over them changes without a jump and is the same from
/// both ends.
/// </summary>
internal ref struct StrongestPaths(ReadOnlySpan<DiffractionEdge> edges, Span<DiffractedPath> found, double least)
{
    private readonly ReadOnlySpan<DiffractionEdge> edges = edges;
    private readonly Span<DiffractedPath> found = found;

    /// <summary>How many there are; strongest first.</summary>
    internal int Count { get; private set; }

    /// <summary>A path of no more power than this is none of them.</summary>
    internal double LeastPower { get; private set; } = least;

    /// <summary>Adds a path, if it is one of them so far.</summary>
    internal void Add(in DiffractedPath path)
    {
        if (path.Power <= LeastPower)
        {
            return;
        }

        for (int k = 0; k < Count; k++)
        {
            if (AreAlike(found[k], path))
            {
                if (found[k].Power >= path.Power)
                {
                    return;
                }

                found[(k + 1)..Count].CopyTo(found[k..]);
                Count--;
                break;
            }
        }

        int at = Count;
        while (at > 0 && found[at - 1].Power < path.Power)
        {
            at--;
        }

        int kept = Math.Min(Count, found.Length - 1);
        found[at..kept].CopyTo(found[(at + 1)..]);
        found[at] = path;
        Count = kept + 1;
        if (Count == found.Length)
        {
            LeastPower = Math.Max(LeastPower, found[^1].Power);
        }
    }

    private readonly bool AreAlike(in DiffractedPath one, in DiffractedPath other) =>
        one.HasTwoEdges == other.HasTwoEdges
        && edges[one.First].Group == edges[other.First].Group
        && edges[one.Last].Group == edges[other.Last].Group;
}
