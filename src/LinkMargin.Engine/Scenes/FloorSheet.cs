namespace LinkMargin.Engine.Scenes;

/// <summary>One level sheet of a floor: its middle height over the lowest floor, its material, its ribs if it is a joist bay.</summary>
internal sealed record FloorSheet(double Height, int Material, RibLayout? Ribs);
