using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>One reflection by the image of its start.</summary>
/// <param name="Image">The start's image.</param>
/// <param name="ImageOfEnd">The end's image.</param>
/// <param name="Place">Where on the mirror.</param>
/// <param name="Share">Where along the unfolded path, 0 to 1.</param>
/// <param name="LengthMetres">Length of the unfolded path, metres.</param>
/// <param name="CosIncidence">Cosine of the angle to the mirror's normal.</param>
/// <param name="PowerRatio">Share of the power thrown back, with what of the zone the mirror fills.</param>
/// <param name="Fold">The mirror, as what stands in the path's way is unfolded at it.</param>
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
    /// <summary>The leg from its start to the mirror, looked at from the end's image.</summary>
    internal Ray There(Point3 from, double wavelengthMetres) => new(from, ImageOfEnd, wavelengthMetres, 0, Share);

    /// <summary>The leg on to its end, looked at from the start's image.</summary>
    internal Ray On(Point3 to, double wavelengthMetres) => new(Image, to, wavelengthMetres, Share);
}
