using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Wavefront;

/// <summary>Upright panels in one plane, which reflect energy together.</summary>
/// <param name="Number">Its number in the scene.</param>
/// <param name="NormalX">East component of its unit normal.</param>
/// <param name="NormalY">North component.</param>
/// <param name="Offset">Distance of the plane from the plan's origin along the normal, metres.</param>
/// <param name="Panels">Its panels, by where they start.</param>
internal sealed record UprightMirror(
    int Number, double NormalX, double NormalY, double Offset, MirrorPanel[] Panels)
{
    private readonly StretchOrder order = new(Panels.Select(panel => (panel.From, panel.To)));

    /// <summary>Where its panels start along the plane, metres.</summary>
    internal double From { get; } = Panels.Min(panel => panel.From);

    /// <summary>Where they end.</summary>
    internal double To { get; } = Panels.Max(panel => panel.To);

    /// <summary>Distance of a place in front of the plane, on the normal's side, metres.</summary>
    internal double Before(double x, double y) => Across(x, y) - Offset;

    /// <summary>Distance of a place from the plan's origin along the normal, metres; <see cref="Offset"/> in the plane.</summary>
    internal double Across(double x, double y) => (NormalX * x) + (NormalY * y);

    /// <summary>The image of a place.</summary>
    internal Point3 ImageOf(Point3 at)
    {
        double twice = 2 * Before(at.X, at.Y);
        return new(at.X - (twice * NormalX), at.Y - (twice * NormalY), at.Z);
    }

    /// <summary>Place along the plane, metres.</summary>
    internal double Along(double x, double y) => (NormalX * y) - (NormalY * x);

    /// <summary>Whether it is a side of a fixture.</summary>
    internal bool IsFixture { get; init; }

    /// <summary>
    /// The only side it reflects on: 1 where its normal points, −1 behind; 0 for both. Within a solid thing nothing is reflected.
    /// </summary>
    internal int OnlySide { get; init; }

    /// <summary>The panels that reach into a stretch of the plane, and perhaps some between them that do not.</summary>
    internal ReadOnlySpan<MirrorPanel> PanelsNear(double from, double to) => order.Within<MirrorPanel>(Panels, from, to);

    /// <summary>The panel at a place, or the nearest to it: a mirror may span several walls and levels.</summary>
    internal MirrorPanel PanelAt(Point3 place)
    {
        double along = Along(place.X, place.Y);
        return Panels.MinBy(panel => double.Hypot(
            along - Math.Clamp(along, panel.From, panel.To), place.Z - Math.Clamp(place.Z, panel.VerticalExtent.Low, panel.VerticalExtent.High)))!;
    }
}

/// <summary>One panel of a mirror: from and to along its plane, heights, material (-1: none), name, and what stands in it.</summary>
internal sealed record MirrorPanel(
    double From, double To, VerticalExtent VerticalExtent, int Material, int Name, OpeningPanel[] Openings);

/// <summary>An opening in a wall: from and to along it, heights above the lowest floor, what fills it (-1: nothing).</summary>
internal readonly record struct OpeningPanel(double From, double To, double Low, double High, int Filling, int Name)
{
    /// <summary>Whether a place on the wall lies in the opening, enlarged by a margin on all sides, metres.</summary>
    internal bool Reaches(double along, double height, double marginMetres) =>
        along >= From - marginMetres && along <= To + marginMetres
        && height >= Low - marginMetres && height <= High + marginMetres;
}

/// <summary>A floor seen from above or a ceiling seen from below.</summary>
/// <param name="Height">Above the lowest floor, metres.</param>
/// <param name="FacesUp">Whether it is a floor.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Level">The level it bounds.</param>
/// <param name="Voids">Holes in it.</param>
internal sealed record LevelMirror(
    double Height, bool FacesUp, int Material, int Level, IReadOnlyList<Polygon> Voids);
