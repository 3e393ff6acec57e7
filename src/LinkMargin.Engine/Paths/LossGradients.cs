using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths;

/// <summary>Receives the paths of one link, with how the loss of each changes with the losses of the house.</summary>
internal interface IGradientRecorder
{
    /// <summary>Starts another path.</summary>
    internal void Begin(double pathPower);

    /// <summary>Adds to the path's slope by a material's loss.</summary>
    /// <param name="material">The material, by number. A whole floor stands for each of its layers.</param>
    /// <param name="place">Where; null where the material is not crossed in one place.</param>
    /// <param name="slope">dB per dB.</param>
    internal void Add(int material, int? place, double slope);
}

/// <summary>Slopes of a path's loss by the losses of what it crosses, taken over one decibel more.</summary>
internal sealed class LossGradients(LossTables losses, IGradientRecorder recorder)
{
    /// <summary>Slopes are taken over this much more loss, dB.</summary>
    internal const double StepDb = 1;

    /// <summary>
    /// The slope of a path's loss from its power at a loss and at <see cref="StepDb"/> more; 0 where no power is left, since no
    /// radio hears a change of it.
    /// </summary>
    internal static double SlopeOf(double before, double after) => before > 0 && after > 0 ? 10 * Math.Log10(before / after) / StepDb : 0;

    /// <summary>Adds a slope.</summary>
    internal void Add(int material, int? place, double slope) => recorder.Add(material, place, slope);

    /// <summary>Adds the slopes of obstacles whose losses add up.</summary>
    internal void AddHits(ReadOnlySpan<Hit> hits)
    {
        foreach (ref readonly Hit hit in hits)
        {
            recorder.Add(hit.Material, hit.Mirror, (losses.Db(hit, StepDb) - losses.Db(hit)) / StepDb);
        }
    }

    /// <summary>Adds the slopes of a front. Its pieces of one material in one place share one slope, from the sum over the whole front.</summary>
    /// <param name="pieces">The pieces in the front.</param>
    internal void AddFront(ReadOnlySpan<Piece> pieces) => AddFront(pieces, FrontReach.Usual, 1);

    /// <summary>The same for a front of any reach that brings part of a path's power.</summary>
    internal void AddFront(ReadOnlySpan<Piece> pieces, in FrontReach reach, double part)
    {
        if (part == 0)
        {
            return;
        }

        using Scratch scratch = Scratch.Open();
        Span<double> all = scratch.Of<double>(pieces.Length);
        for (int i = 0; i < pieces.Length; i++)
        {
            all[i] = losses.Amplitude(pieces[i]);
        }

        double before = FrontSum.PowerRatio(pieces, all, reach);
        if (!(before > 0))
        {
            return;
        }

        for (int i = 0; i < pieces.Length; i++)
        {
            if (IsFirstOfItsKind(pieces, i))
            {
                for (int j = i; j < pieces.Length; j++)
                {
                    all[j] = losses.Amplitude(pieces[j], AreAlike(pieces[i], pieces[j]) ? StepDb : 0);
                }

                double after = FrontSum.PowerRatio(pieces, all, reach);
                recorder.Add(pieces[i].Material, PlaceOf(pieces[i]), part * SlopeOf(before, after));
                for (int j = i; j < pieces.Length; j++)
                {
                    all[j] = losses.Amplitude(pieces[j]);
                }
            }
        }
    }

    private static bool IsFirstOfItsKind(ReadOnlySpan<Piece> pieces, int i)
    {
        for (int j = 0; j < i; j++)
        {
            if (AreAlike(pieces[j], pieces[i]))
            {
                return false;
            }
        }

        return true;
    }

    private static bool AreAlike(in Piece one, in Piece other) =>
        one.Material == other.Material && PlaceOf(one) == PlaceOf(other);

    // A wall and its image are one wall; a piece that shares its plane with no other is a floor, or part of one fixture.
    private static int PlaceOf(in Piece piece) => piece.Plane < Piece.NoPlane ? Piece.ImageOf(piece.Plane) : piece.Plane;
}
