using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>A floor seen from above or a ceiling seen from below.</summary>
/// <param name="Height">Over the lowest floor, metres.</param>
/// <param name="FacesUp">Whether it is a floor.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Level">The level it bounds.</param>
/// <param name="Voids">Holes in it.</param>
internal sealed record LevelMirror(
    double Height, bool FacesUp, int Material, int Level, IReadOnlyList<Polygon> Voids);
