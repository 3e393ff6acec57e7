namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Amplitudes above each other in some strips of a front, with level edges between them. Until they are summed, the greatest of them stands for each
/// stack: no mean is above what that alone would give.
/// </summary>
internal ref struct LevelStacks
{
    private readonly FrontReach reach;
    private readonly Span<ulong> strips; // in which each stands: a word of them
    private readonly Span<int> words; // and its number
    private readonly Span<double> passes; // the greatest amplitude; the sum, once that is known
    private readonly Span<int> firstLevel; // of each, its first level edge; one longer
    private readonly Span<double> levels; // level edges, stack by stack
    private readonly Span<double> amplitudes; // between them, from below: one more for each stack

    // Of the stack that is being made.
    private int level;
    private double amplitude;
    private double greatest;

    /// <summary>Makes room.</summary>
    /// <param name="scratch">Where to take it from.</param>
    /// <param name="most">For how many stacks.</param>
    /// <param name="mostLevels">For how many level edges.</param>
    /// <param name="reach">How far out the front reaches.</param>
    internal LevelStacks(in Scratch scratch, int most, int mostLevels, in FrontReach reach)
    {
        this.reach = reach;
        strips = scratch.Of<ulong>(most);
        words = scratch.Of<int>(most);
        passes = scratch.Of<double>(most);
        firstLevel = scratch.Of<int>(most + 1);
        firstLevel[0] = 0;
        levels = scratch.Of<double>(mostLevels);
        amplitudes = scratch.Of<double>(mostLevels + most);
    }

    /// <summary>How many there are.</summary>
    internal int Count { get; private set; }

    /// <summary>The strips in which one stands, by the number of a word of them and a bit each, and the amplitude that stands for it.</summary>
    internal readonly (int Word, ulong Strips, double Amplitude) this[int stack] => (words[stack], strips[stack], passes[stack]);

    /// <summary>Begins one with an amplitude at the bottom.</summary>
    internal void Begin(double below)
    {
        level = firstLevel[Count];
        amplitude = below;
        greatest = 0;
    }

    /// <summary>Goes on to another amplitude at a height, v. Heights come in order; what is below or above the front has no edge in it.</summary>
    internal void Step(double height, double next)
    {
        if (height >= reach.End || next == amplitude)
        {
            return;
        }

        if (height > -reach.End)
        {
            amplitudes[level + Count] = amplitude;
            levels[level++] = height;
            greatest = double.MaxNative(greatest, amplitude);
        }

        amplitude = next;
    }

    /// <summary>Ends it; false where there is no edge in it, but only one amplitude.</summary>
    /// <param name="word">The number of a word of strips.</param>
    /// <param name="inStrips">The strips in which it stands.</param>
    /// <param name="only">That amplitude.</param>
    internal bool End(int word, ulong inStrips, out double only)
    {
        only = amplitude;
        if (level == firstLevel[Count])
        {
            return false;
        }

        amplitudes[level + Count] = amplitude;
        passes[Count] = double.MaxNative(greatest, amplitude);
        strips[Count] = inStrips;
        words[Count] = word;
        firstLevel[++Count] = level;
        return true;
    }

    /// <summary>Lets the root of its mean power stand for each, all edges at once.</summary>
    internal readonly void Sum()
    {
        int all = firstLevel[Count], room = StripSum.WholeVectors(all);
        using Scratch scratch = Scratch.Open();
        Span<double> inStep = scratch.Of<double>(room), scattered = scratch.Of<double>(room);
        levels[..all].CopyTo(scattered);
        scattered[all..].Clear();
        StripSum.Waves(inStep, scattered, reach);
        for (int stack = 0; stack < Count; stack++)
        {
            int first = firstLevel[stack], edges = firstLevel[stack + 1] - first;
            passes[stack] = Math.Sqrt(StripSum.MeanPower(
                levels.Slice(first, edges), amplitudes.Slice(first + stack, edges + 1), inStep.Slice(first, edges), scattered.Slice(first, edges)));
        }
    }
}
