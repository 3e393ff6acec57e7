using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>One wall on its way into a scene's arrays: heights over the lowest floor, names and materials by number.</summary>
internal sealed record WallPanel(
    Point2 Start, Point2 End, double Low, double High, int Material, int Name, IReadOnlyList<OpeningPanel> Openings);
