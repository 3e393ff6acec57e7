namespace LinkMargin.Engine.Scenes;

/// <summary>One level's walls and the heights between which they stand, over the lowest floor.</summary>
internal sealed record Storey(double Low, double High, WallPanels Walls);
