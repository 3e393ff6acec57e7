using System.Runtime.Intrinsics;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// A front cut into upright strips at the ends of its pieces, and what passes each of them. What stands in a strip and in one plane is one amplitude
/// from bottom to top, or several above each other. Their level edges are summed, all at once, only if enough may pass by the greatest amplitudes.
/// </summary>
internal ref struct FrontStrips
{
    // Strips that stand for one bit each of a word.
    private const int Word = 64;

    private const int Lanes = 8;

    private readonly ReadOnlySpan<Piece> pieces;
    private readonly ReadOnlySpan<double> each; // amplitude of each piece
    private readonly double beside;
    private readonly FrontReach reach;
    private readonly Span<double> edges; // between strips
    private readonly Span<double> middles; // of strips, in whole vectors
    private readonly Span<double> through;

    private LevelStacks stacks;

    /// <summary>Cuts a front.</summary>
    /// <param name="scratch">Where to take room from.</param>
    /// <param name="pieces">Its pieces.</param>
    /// <param name="each">Their amplitudes.</param>
    /// <param name="taken">Those that have ends in it, by number.</param>
    /// <param name="reach">How far out it reaches.</param>
    /// <param name="beside">Amplitude where nothing stands: 1, or 0 for a mirror.</param>
    internal FrontStrips(
        in Scratch scratch, ReadOnlySpan<Piece> pieces, ReadOnlySpan<double> each, ReadOnlySpan<int> taken, in FrontReach reach, double beside)
    {
        this.pieces = pieces;
        this.each = each;
        this.reach = reach;
        this.beside = beside;
        edges = UprightEdges(scratch.Of<double>(2 * taken.Length), taken);
        int many = edges.Length + 1, whole = (many + Lanes - 1) / Lanes * Lanes;
        middles = scratch.Of<double>(whole);
        through = scratch.Of<double>(whole);
        for (int s = 0; s < many; s++)
        {
            middles[s] = FrontEdges.Middle(edges, s, reach);
        }

        middles[many..].Fill(double.PositiveInfinity);
        through.Fill(beside);

        // Where the pieces of a plane are the same, they are one part; they change at each of their ends, and a word ends.
        int manyWords = (many + Word - 1) / Word, most = (taken.Length * (manyWords + 2)) + manyWords, mostLevels = 2 * taken.Length * ((2 * taken.Length) + manyWords);
        stacks = new LevelStacks(scratch, most, mostLevels, reach);
    }

    /// <summary>Adds a piece that has its plane for itself.</summary>
    internal void AddAlone(int number)
    {
        ref readonly Piece piece = ref pieces[number];
        if (piece.Bottom <= -reach.End && piece.Top >= reach.End)
        {
            Vector512<double> low = Vector512.Create(piece.Low), high = Vector512.Create(piece.High), factor = Vector512.Create(each[number]);
            for (int s = 0; s < through.Length; s += Lanes)
            {
                Vector512<double> at = Vector512.LoadUnsafe(ref middles[s]);
                Pass(s, Vector512.LessThan(low, at) & Vector512.LessThan(at, high), factor);
            }

            return;
        }

        for (int word = 0; word * Word < through.Length; word++)
        {
            stacks.Begin(beside);
            stacks.Step(piece.Bottom, each[number]);
            stacks.Step(piece.Top, beside);
            End(word, StripsOf(piece, word));
        }
    }

    /// <summary>Adds pieces that stand in one plane.</summary>
    /// <param name="members">The pieces, by number, in order of their bottoms.</param>
    internal void AddPlane(ReadOnlySpan<int> members)
    {
        using Scratch scratch = Scratch.Open();
        Span<ulong> inStrips = scratch.Of<ulong>(members.Length);
        for (int word = 0; word * Word < through.Length; word++)
        {
            ulong left = 0;
            for (int k = 0; k < members.Length; k++)
            {
                left |= inStrips[k] = StripsOf(pieces[members[k]], word);
            }

            while (left != 0)
            {
                left &= ~AddStack(members, inStrips, word, left);
            }
        }
    }

    /// <summary>Mean power of all strips.</summary>
    /// <param name="least">Power that is no more than this is returned as 0.</param>
    internal readonly double MeanPower(double least)
    {
        // No mean is above what the strip of the greatest amplitude alone would give.
        int many = edges.Length + 1;
        using Scratch scratch = Scratch.Open();
        Span<double> most = through;
        if (stacks.Count > 0)
        {
            most = scratch.Of<double>(through.Length);
            through.CopyTo(most);
            PassStacks(most);
        }

        double mostThrough = 0;
        foreach (double strip in most[..many])
        {
            mostThrough = double.MaxNative(mostThrough, strip);
        }

        if (mostThrough * mostThrough <= least)
        {
            return 0;
        }

        if (stacks.Count > 0)
        {
            stacks.Sum();
            PassStacks(through);
        }

        return StripSum.MeanPower(edges, through[..many], reach);
    }

    // Where pieces begin and end, in order.
    private readonly Span<double> UprightEdges(Span<double> room, ReadOnlySpan<int> taken)
    {
        int many = 0;
        double low = double.NaN, high = double.NaN; // of the piece before: mostly the next one begins where it ends
        foreach (int i in taken)
        {
            ref readonly Piece piece = ref pieces[i];
            if (piece.Low != low && piece.Low != high)
            {
                FrontEdges.Add(room, ref many, piece.Low, reach);
            }

            if (piece.High != low && piece.High != high)
            {
                FrontEdges.Add(room, ref many, piece.High, reach);
            }

            (low, high) = (piece.Low, piece.High);
        }

        return room[..FrontEdges.Arrange(room[..many])];
    }

    // The strips of one word in which a piece is.
    private readonly ulong StripsOf(in Piece piece, int word)
    {
        Vector512<double> low = Vector512.Create(piece.Low), high = Vector512.Create(piece.High);
        ulong bits = 0;
        int end = Math.Min(through.Length, (word + 1) * Word);
        for (int s = word * Word; s < end; s += Lanes)
        {
            Vector512<double> at = Vector512.LoadUnsafe(ref middles[s]);
            bits |= (Vector512.LessThan(low, at) & Vector512.LessThan(at, high)).ExtractMostSignificantBits() << s;
        }

        return bits;
    }

    // Adds what stands in the first of the strips that are left; returns all strips with the same.
    private ulong AddStack(ReadOnlySpan<int> members, ReadOnlySpan<ulong> inStrips, int word, ulong left)
    {
        ulong first = left & (~left + 1), same = left;
        double top = double.NaN;
        bool isSimple = true;
        stacks.Begin(beside);
        for (int k = 0; k < members.Length; k++)
        {
            if ((inStrips[k] & first) == 0)
            {
                same &= ~inStrips[k];
                continue;
            }

            same &= inStrips[k];

            // The next one up may begin where the last one ended, or clear of it; anything else is sorted out below.
            ref readonly Piece piece = ref pieces[members[k]];
            bool isClear = piece.Bottom - top > FrontEdges.SameEdge;
            isSimple &= (isClear || piece.Bottom == top || double.IsNaN(top)) && piece.Top - piece.Bottom > FrontEdges.SameEdge;
            if (isClear)
            {
                stacks.Step(top, beside);
            }

            stacks.Step(piece.Bottom, each[members[k]]);
            top = piece.Top;
        }

        if (isSimple)
        {
            stacks.Step(top, beside);
        }
        else
        {
            Stack(members, inStrips, first);
        }

        End(word, same);
        return same;
    }

    // What stands above each other, for any pieces: of several at one height counts the one that loses more, or for a mirror reflects more.
    private void Stack(ReadOnlySpan<int> members, ReadOnlySpan<ulong> inStrips, ulong strip)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> heights = scratch.Of<double>(2 * members.Length);
        int many = 0;
        for (int k = 0; k < members.Length; k++)
        {
            if ((inStrips[k] & strip) != 0)
            {
                FrontEdges.Add(heights, ref many, pieces[members[k]].Bottom, reach);
                FrontEdges.Add(heights, ref many, pieces[members[k]].Top, reach);
            }
        }

        heights = heights[..FrontEdges.Arrange(heights[..many])];
        stacks.Begin(beside);
        for (int s = 0; s <= heights.Length; s++)
        {
            double height = FrontEdges.Middle(heights, s, reach), next = beside;
            for (int k = 0; k < members.Length; k++)
            {
                ref readonly Piece piece = ref pieces[members[k]];
                if ((inStrips[k] & strip) != 0 && piece.Bottom < height && piece.Top > height)
                {
                    next = beside == 0 ? Math.Max(next, each[members[k]]) : Math.Min(next, each[members[k]]);
                }
            }

            stacks.Step(s == 0 ? double.NegativeInfinity : heights[s - 1], next);
        }
    }

    // Ends a stack: without level edges it passes at once.
    private void End(int word, ulong bits)
    {
        if (!stacks.End(word, bits, out double only))
        {
            Pass(through, word, bits, only);
        }
    }

    // What passes the stacks with level edges.
    private readonly void PassStacks(Span<double> all)
    {
        for (int i = 0; i < stacks.Count; i++)
        {
            (int word, ulong strips, double amplitude) = stacks[i];
            Pass(all, word, strips, amplitude);
        }
    }

    private readonly void Pass(Span<double> all, int word, ulong bits, double factor)
    {
        Vector512<double> by = Vector512.Create(factor);
        Vector512<long> lanes = Vector512.Create(1L, 2, 4, 8, 16, 32, 64, 128);
        for (int s = word * Word; bits != 0; s += Lanes, bits >>= Lanes)
        {
            Vector512<double> so = Vector512.LoadUnsafe(ref all[s]);
            Vector512<double> passes = Vector512.Equals(Vector512.Create((long)bits) & lanes, lanes).AsDouble();
            Vector512.ConditionalSelect(passes, beside == 0 ? by : so * by, so).StoreUnsafe(ref all[s]);
        }
    }

    private readonly void Pass(int strip, Vector512<double> passes, Vector512<double> factor)
    {
        Vector512<double> so = Vector512.LoadUnsafe(ref through[strip]);
        Vector512.ConditionalSelect(passes, beside == 0 ? factor : so * factor, so).StoreUnsafe(ref through[strip]);
    }
}
