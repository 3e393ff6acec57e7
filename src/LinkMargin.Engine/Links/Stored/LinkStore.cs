using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Links.Stored;

/// <summary>Takes down the paths of one link of the full model, each with its slopes.</summary>
internal sealed class LinkStore(FullSpotModel model, Point3 hands, GradientRecorder book) : IPathVisitor
{
    /// <summary>Slopes are taken over this much more loss, dB.</summary>
    internal const double StepDb = 1;

    private double[] amplitudes = new double[32];

    /// <inheritdoc/>
    public void Direct(double power, TraceBuffer buffer)
    {
        book.Begin(power);
        AddFront(buffer.Pieces);
    }

    /// <inheritdoc/>
    public void Diffuse(double power)
    {
        if (power > 0)
        {
            book.Begin(power);
            foreach ((int material, double slope) in model.Shifted.SlopesAt(hands, model.Diffuse))
            {
                book.Add(material, null, slope);
            }
        }
    }

    /// <inheritdoc/>
    public void Upright(UprightMirror mirror, in Reflection reflection, double power, TraceBuffer buffer)
    {
        book.Begin(power);
        AddFront(buffer.Pieces);
    }

    /// <inheritdoc/>
    public void Level(LevelMirror mirror, in Reflection reflection, double power, TraceBuffer buffer)
    {
        book.Begin(power);
        AddFront(buffer.Pieces);
    }

    /// <inheritdoc/>
    public void Around(in DiffractedPath way, TraceBuffer buffer)
    {
        book.Begin(way.Power);
        Span<Point3> corners = stackalloc Point3[DiffractedPaths.MostCorners];
        int count = model.DiffractedPaths.Corners(way, hands, corners);
        for (int i = 0; i + 2 < count; i++)
        {
            model.Scene.Trace(corners[i], corners[i + 1], buffer, wholeFloors: true);
            foreach (ref readonly Hit hit in buffer.Hits)
            {
                book.Add(hit.Material, hit.Mirror, (model.Losses.Db(hit, StepDb) - model.Losses.Db(hit)) / StepDb);
            }
        }

        model.Scene.Gather(new Ray(way.Place, hands, model.Scene.Band.Equivalent.WavelengthMetres), buffer);
        AddFront(buffer.Pieces);
    }

    /// <summary>
    /// The slope of a path's loss from its power at a loss and at <see cref="StepDb"/> more; 0 where nothing is left of it, since
    /// no radio hears a change of nothing.
    /// </summary>
    internal static double SlopeOf(double before, double after) => before > 0 && after > 0 ? 10 * Math.Log10(before / after) / StepDb : 0;

    // What of a front stands in one place of one material gets its slope from the sum over the whole front.
    private void AddFront(ReadOnlySpan<Piece> pieces)
    {
        if (amplitudes.Length < pieces.Length)
        {
            Array.Resize(ref amplitudes, 2 * pieces.Length);
        }

        Span<double> all = amplitudes.AsSpan(0, pieces.Length);
        for (int i = 0; i < pieces.Length; i++)
        {
            all[i] = model.Losses.Amplitude(pieces[i]);
        }

        double before = FrontSum.PowerRatio(pieces, all);
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
                    all[j] = model.Losses.Amplitude(pieces[j], AreAlike(pieces[i], pieces[j]) ? StepDb : 0);
                }

                double after = FrontSum.PowerRatio(pieces, all);
                book.Add(pieces[i].Material, PlaceOf(pieces[i]), SlopeOf(before, after));
                for (int j = i; j < pieces.Length; j++)
                {
                    all[j] = model.Losses.Amplitude(pieces[j]);
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

    // A wall and its image are one wall; what shares its plane with nothing is a floor, or part of one fixture.
    private static int PlaceOf(in Piece piece) => piece.Plane < Piece.NoPlane ? Piece.ImageOf(piece.Plane) : piece.Plane;
}
