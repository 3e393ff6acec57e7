using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>One wall on its way into a scene's arrays: heights over the lowest floor, names and materials by number.</summary>
/// <param name="Start">One end.</param>
/// <param name="End">The other end.</param>
/// <param name="Rise">The heights it stands between.</param>
/// <param name="Mirror">The mirror it is part of, by number.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Openings">Its openings, by their place along it.</param>
internal sealed record WallPanel(
    Point2 Start, Point2 End, Rise Rise, int Mirror, int Material, int Name, IReadOnlyList<OpeningPanel> Openings);
