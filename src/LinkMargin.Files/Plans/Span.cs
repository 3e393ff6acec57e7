namespace LinkMargin.Files.Plans;

/// <summary>A stretch along a segment, metres from its start.</summary>
internal readonly record struct Span(double From, double To)
{
    /// <summary>Length, metres; below zero where the stretch is empty.</summary>
    internal double Length => To - From;

    /// <summary>Middle, metres from the segment's start.</summary>
    internal double Middle => (From + To) / 2;

    /// <summary>What both cover; its length is below zero where they do not meet.</summary>
    internal Span Meet(Span other) => new(Math.Max(From, other.From), Math.Min(To, other.To));

    /// <summary>What remains of this stretch after others are taken away, longer than a corner's tolerance.</summary>
    internal IEnumerable<Span> Less(IEnumerable<Span> others)
    {
        double from = From;
        foreach (Span taken in others.OrderBy(s => s.From))
        {
            if (taken.From - from > PlanLimits.JoinMetres)
            {
                yield return new Span(from, Math.Min(taken.From, To));
            }

            from = Math.Max(from, taken.To);
        }

        if (To - from > PlanLimits.JoinMetres)
        {
            yield return new Span(from, To);
        }
    }
}
