namespace LinkMargin.Engine.Scenes;

/// <summary>One level's walls, and the heights between which they stand, over the lowest floor.</summary>
/// <param name="Low">Its floor.</param>
/// <param name="High">Its ceiling, or the floor above.</param>
/// <param name="Walls">Its walls.</param>
/// <param name="Joints">Where they end and meet.</param>
/// <param name="Gaps">Where they stand open.</param>
internal sealed record Storey(
    double Low, double High, WallPanels Walls, IReadOnlyList<WallJoint> Joints, IReadOnlyList<OpenGap> Gaps);
