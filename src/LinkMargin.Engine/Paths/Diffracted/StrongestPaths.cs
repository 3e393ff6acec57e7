namespace LinkMargin.Engine.Paths.Diffracted;

/// <summary>
/// The strongest few diffracted paths of a link. Which these are depends on their powers alone, so a sum over them never jumps and
/// is the same from both ends.
/// </summary>
internal ref struct StrongestPaths(Span<DiffractedPath> found, double least)
{
    private readonly Span<DiffractedPath> found = found;

    /// <summary>How many there are; strongest first.</summary>
    internal int Count { get; private set; }

    /// <summary>A path with no more power than this is not one of them.</summary>
    internal double LeastPower { get; private set; } = least;

    /// <summary>Adds a path, if it is one of them so far.</summary>
    internal void Add(in DiffractedPath path)
    {
        if (path.Power <= LeastPower)
        {
            return;
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
        LeastPower = Count == found.Length ? Math.Max(LeastPower, found[^1].Power) : LeastPower;
    }
}
