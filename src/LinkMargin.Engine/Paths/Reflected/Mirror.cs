using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>
/// First-order reflections of one console's energy, by images. What the panels of a mirror reflect is summed over the front
/// like what passes an opening: a mirror is an opening into its image. So a reflection fades at the edge of a wall, and a wall
/// in two parts is one mirror.
/// </summary>
internal static class Mirror
{
    // A mirror that reflects less than this is not in the sum; it has faded out long before.
    private const double LeastPower = 1e-6;

    /// <summary>A reflection in an upright mirror; false where almost nothing is reflected.</summary>
    internal static bool InUpright(
        UprightMirror mirror, in MirrorView view, in LinkEnds ends, TracedHouse house, in FrontReach reaches, TraceBuffer buffer, out Reflection reflection)
    {
        reflection = default;
        Point3 from = ends.Start, to = ends.End;
        double wavelengthMetres = house.WavelengthMetres;

        // On the wall the Fresnel zone is stretched along it by the angle on the plan, and vertically by the slope.
        double t = view.Share, at = view.AlongMetres, alongScale = view.AlongScale(wavelengthMetres), reach = reaches.End / alongScale;
        if (at + reach <= mirror.From || at - reach >= mirror.To)
        {
            return false;
        }

        Point3 image = mirror.ImageOf(from);
        if (TryWhole(mirror, at - reach, at + reach, Math.Min(from.Z, to.Z), Math.Max(from.Z, to.Z)) is { } whole)
        {
            double amplitude = Reflected(whole, view.CosIncidence, house.Losses), all = amplitude * amplitude;
            buffer.PieceCount = 0;
            buffer.NextPiece() = new Piece
            {
                Low = double.NegativeInfinity,
                High = double.PositiveInfinity,
                Bottom = double.NegativeInfinity,
                Top = double.PositiveInfinity,
                Material = whole,
            };
            reflection = new Reflection(
                image, mirror.ImageOf(to), image.Towards(to, t), t, view.LengthMetres, view.CosIncidence, all, Fold.At(mirror, from));
            return all >= LeastPower;
        }

        double onwards = view.Slant * Math.Abs(view.Before + view.After), one = t + ((mirror.From - at) / onwards), other = t + ((mirror.To - at) / onwards);
        var ray = new Ray(image, to, wavelengthMetres, reach: reaches);
        var heights = FrontHeights.OfWall(ray, t, view.PlanMetres / view.Slant, Math.Max(0, Math.Min(one, other)), Math.Min(1, Math.Max(one, other)));
        buffer.PieceCount = 0;
        foreach (MirrorPanel panel in mirror.PanelsNear(at - reach, at + reach))
        {
            if (panel.From < at + reach && panel.To > at - reach)
            {
                AddPanel(buffer, panel, at, alongScale, heights, Math.Min(from.Z, to.Z), Math.Max(from.Z, to.Z));
            }
        }

        using Scratch scratch = Scratch.Open();
        Span<double> amplitudes = scratch.Of<double>(buffer.PieceCount);
        for (int i = 0; i < amplitudes.Length; i++)
        {
            amplitudes[i] = Reflected(buffer.Pieces[i].Material, view.CosIncidence, house.Losses);
        }

        double power = FrontSum.Reflected(buffer.Pieces, amplitudes, reaches);
        if (power < LeastPower)
        {
            return false;
        }

        reflection = new Reflection(
            image, mirror.ImageOf(to), image.Towards(to, t), t, view.LengthMetres, view.CosIncidence, power, Fold.At(mirror, from));
        return true;
    }

    // The material of the one panel that fills a whole front, from floor to ceiling and without an opening; null where none does.
    private static int? TryWhole(UprightMirror mirror, double from, double to, double least, double greatest)
    {
        int? found = null;
        foreach (MirrorPanel panel in mirror.PanelsNear(from, to))
        {
            if (panel.From >= to || panel.To <= from || !panel.VerticalExtent.IsMetBetween(least, greatest))
            {
                continue;
            }

            bool isWhole = found is null && panel.Material >= 0 && panel.From <= from && panel.To >= to
                && double.IsNegativeInfinity(panel.VerticalExtent.BottomFor(least)) && double.IsPositiveInfinity(panel.VerticalExtent.TopFor(greatest));
            foreach (OpeningPanel opening in panel.Openings)
            {
                isWhole &= opening.From >= to || opening.To <= from;
            }

            if (!isWhole)
            {
                return null;
            }

            found = panel.Material;
        }

        return found;
    }

    /// <summary>The geometry of a reflection in a floor or ceiling; false unless both ends are on the side that it faces.</summary>
    internal static bool InLevel(
        LevelMirror mirror, in LinkEnds ends, TracedHouse house, in FrontReach reach, out Reflection reflection)
    {
        reflection = default;
        Point3 from = ends.Start, to = ends.End;
        double sign = mirror.FacesUp ? 1 : -1;
        double before = sign * (from.Z - mirror.Height), after = sign * (to.Z - mirror.Height);
        if (!(before > 0 && after > 0))
        {
            return false;
        }

        Point3 image = new(from.X, from.Y, (2 * mirror.Height) - from.Z);
        Point3 imageOfEnd = new(to.X, to.Y, (2 * mirror.Height) - to.Z);
        double t = before / (before + after), length = image.DistanceTo(to);
        double cosine = Math.Min(1, (before + after) / length);
        double amplitude = Reflected(mirror.Material, cosine, house.Losses);
        if (mirror.Voids.Count > 0)
        {
            var ray = new Ray(image, to, house.WavelengthMetres, reach: reach);
            Point2 at = ray.PointAt(t).Plan;
            amplitude *= 1 - mirror.Voids.Max(hole => LevelPlate.Share(ray, t, hole.DepthOf(at)));
        }

        double power = amplitude * amplitude;
        if (power < LeastPower)
        {
            return false;
        }

        reflection = new Reflection(image, imageOfEnd, image.Towards(to, t), t, length, cosine, power, Fold.At(mirror));
        return true;
    }

    // The panel between its openings, what fills them, and the panel below and above them.
    private static void AddPanel(
        TraceBuffer buffer, MirrorPanel panel, double at, double scale, FrontHeights heights, double least, double greatest)
    {
        if (!panel.VerticalExtent.IsMetBetween(least, greatest))
        {
            return;
        }

        double bottom = panel.VerticalExtent.BottomFor(least), top = panel.VerticalExtent.TopFor(greatest), from = panel.From;
        foreach (OpeningPanel opening in panel.Openings)
        {
            double sill = opening.Low <= panel.VerticalExtent.Low + VerticalExtent.SameMetres ? bottom : opening.Low;
            double head = opening.High >= panel.VerticalExtent.High - VerticalExtent.SameMetres ? top : opening.High;
            Add(from, opening.From, bottom, top, panel.Material);
            Add(opening.From, opening.To, bottom, sill, panel.Material);
            Add(opening.From, opening.To, sill, head, opening.Filling);
            Add(opening.From, opening.To, head, top, panel.Material);
            from = opening.To;
        }

        Add(from, panel.To, bottom, top, panel.Material);

        void Add(double start, double end, double low, double high, int material)
        {
            if (material >= 0 && start < end && low < high)
            {
                var piece = new Piece { Low = (start - at) * scale, High = (end - at) * scale, Plane = 0, Material = material };
                heights.Add(buffer, Fold.None, piece, low, high);
            }
        }
    }

    private static double Reflected(int material, double cosine, LossTables losses) =>
        material < 0 ? 0 : Math.Sqrt(losses[material].Reflectance(cosine));
}

/// <summary>One reflection by the image of its start.</summary>
/// <param name="Image">The start's image.</param>
/// <param name="ImageOfEnd">The end's image.</param>
/// <param name="Place">Where on the mirror.</param>
/// <param name="Share">Where along the unfolded path, 0 to 1.</param>
/// <param name="LengthMetres">Length of the unfolded path, metres.</param>
/// <param name="CosIncidence">Cosine of the angle to the mirror's normal.</param>
/// <param name="PowerRatio">Share of the power reflected, with the part of the zone that the mirror fills.</param>
/// <param name="Fold">The mirror at which obstacles on the path are unfolded.</param>
internal readonly record struct Reflection(
    Point3 Image,
    Point3 ImageOfEnd,
    Point3 Place,
    double Share,
    double LengthMetres,
    double CosIncidence,
    double PowerRatio,
    Fold Fold)
{
    /// <summary>The leg from its start to the mirror, as seen from the end's image.</summary>
    internal Ray There(Point3 from, double wavelengthMetres, in FrontReach reach) => new(from, ImageOfEnd, wavelengthMetres, 0, Share, reach);

    /// <summary>The leg on to its end, as seen from the start's image.</summary>
    internal Ray On(Point3 to, double wavelengthMetres, in FrontReach reach) => new(Image, to, wavelengthMetres, Share, reach: reach);
}
