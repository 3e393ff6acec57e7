using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>
/// The walls, floors and ceilings that a straight line runs along, close enough for the wave that they reflect to interfere with
/// the one on the line (<see cref="GrazingWindow"/>). Such a surface shadows the line only by its reflection: close to it the
/// reflected wave cancels the other one. So its panels are taken out of the line's front as far as they fill the place where they
/// reflect and as the reflected wave gets through; only a free edge counts as an edge. What touches the surface and obstructs both
/// waves continues in its own image, so no path opens past it where the panels were.
/// </summary>
internal sealed class SurfacesAlong(TracedHouse house)
{
    // A reflection that brings no more than this share of free space is far beyond the greatest loss that is reported.
    private const double LeastShare = 1e-18;

    private readonly ReflectedPower reflected = new(house);

    /// <summary>Finds the surfaces of a link and writes them into the buffer.</summary>
    internal void FindFor(in LinkEnds ends, TraceBuffer buffer)
    {
        buffer.SurfaceCount = 0;
        double metres = ends.DistanceMetres, least = LeastShare * house.FreeSpaceRatio(metres);
        double most = GrazingWindow.MostSquareMetres(metres, house.WavelengthMetres);
        foreach (UprightMirror mirror in house.Scene.Uprights)
        {
            double before = mirror.Before(ends.Start.X, ends.Start.Y), after = mirror.Before(ends.End.X, ends.End.Y);
            if (before * after > 0
                && before * after < most
                && !mirror.IsFixture
                && MirrorView.TryOf(mirror, ends.Start, ends.End, out MirrorView view)
                && Mirror.InUpright(mirror, view, ends, house, FrontReach.Usual, buffer, out Reflection reflection))
            {
                var window = new Window(Math.Abs(before), Math.Abs(after), metres, house.WavelengthMetres);
                (double fill, double more, double inStep) = OfPanels(buffer.Pieces, reflection, window);
                Add(mirror.Number, reflection, ends, least, buffer, window.Near, (fill, more, inStep));
            }
        }

        IReadOnlyList<LevelMirror> plates = house.Scene.Plates;
        for (int i = 0; i < plates.Count; i++)
        {
            LevelMirror mirror = plates[i];
            double before = ends.Start.Z - mirror.Height, after = ends.End.Z - mirror.Height;
            if (before * after > 0 && before * after < most && Mirror.InLevel(mirror, ends, house, FrontReach.Usual, out Reflection reflection))
            {
                var window = new Window(Math.Abs(before), Math.Abs(after), metres, house.WavelengthMetres);
                (double more, double inStep) = window.Of(house.Losses[mirror.Material], reflection.CosIncidence);
                Add(SurfaceAlong.OfPlate(i), reflection, ends, least, buffer, window.Near, (0, more, inStep));
            }
        }
    }

    private void Add(
        int mirror, in Reflection reflection, in LinkEnds ends, double least, TraceBuffer buffer, double near, (double Fill, double More, double InStep) surface)
    {
        double power = reflected.Of(reflection, ends, buffer, least, FrontReach.Usual), body = ReflectedPower.BodyFactor(house, reflection, ends);
        double bodiless = body > 0 ? power / body : power;
        double clear = house.FreeSpaceRatio(reflection.LengthMetres) * reflection.PowerRatio; // without obstacles
        double fill = near * surface.Fill * Math.Min(1, Math.Sqrt(bodiless / clear));
        buffer.Add(new SurfaceAlong(mirror, power, bodiless, fill, near * surface.More, near * surface.InStep));
    }

    // How far panels fill the place where their mirror reflects, and the part of the reflection in phase. With several materials each
    // counts by what it reflects there.
    private (double Fill, double More, double InStep) OfPanels(ReadOnlySpan<Piece> panels, in Reflection reflection, in Window window)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> amplitudes = scratch.Of<double>(panels.Length), mores = scratch.Of<double>(panels.Length), inSteps = scratch.Of<double>(panels.Length);
        amplitudes.Fill(1);
        double fill = Math.Sqrt(FrontSum.Reflected(panels, amplitudes, FrontReach.Usual));
        bool isOne = true;
        for (int i = 0; i < panels.Length; i++)
        {
            AngleTable table = house.Losses[panels[i].Material];
            bool isFirst = panels[i].Material == panels[0].Material;
            isOne &= isFirst;
            (mores[i], inSteps[i]) = isFirst && i > 0 ? (mores[0], inSteps[0]) : window.Of(table, reflection.CosIncidence);
            amplitudes[i] = Math.Sqrt(table.Reflectance(reflection.CosIncidence));
        }

        return isOne ? (fill, mores[0], inSteps[0])
            : (fill, Mean(panels, amplitudes, mores, reflection.PowerRatio), Mean(panels, amplitudes, inSteps, reflection.PowerRatio));
    }

    // The mean of numbers from −1 to 1, one for each panel.
    private static double Mean(ReadOnlySpan<Piece> panels, ReadOnlySpan<double> amplitudes, ReadOnlySpan<double> each, double power)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> weighted = scratch.Of<double>(panels.Length);
        for (int i = 0; i < weighted.Length; i++)
        {
            weighted[i] = amplitudes[i] * (1 + Math.Clamp(each[i], -1, 1)) / 2;
        }

        return Math.Clamp((2 * Math.Sqrt(FrontSum.Reflected(panels, weighted, FrontReach.Usual) / power)) - 1, -1, 1);
    }

    // The window of one surface.
    private readonly record struct Window(double First, double Second, double StraightMetres, double WavelengthMetres)
    {
        internal double Near { get; } = GrazingWindow.Near(First, Second, StraightMetres, WavelengthMetres);

        // How much more a material reflects as the mean over the window than at its middle, and the part of its wave in phase: shares of the
        // power and of its root at the middle.
        internal (double More, double InStep) Of(AngleTable table, double cosIncidence)
        {
            (double power, double inStep) = GrazingWindow.Mean(table, First, Second, StraightMetres, WavelengthMetres);
            double middle = table.Reflectance(cosIncidence);
            return middle > 0 ? ((power / middle) - 1, inStep / Math.Sqrt(middle)) : (0, 0);
        }
    }
}
