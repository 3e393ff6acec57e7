namespace LinkMargin.Engine.Scenes;

/// <summary>An opening in a wall: from and to along it, heights over the lowest floor, what fills it (-1: nothing).</summary>
internal readonly record struct OpeningPanel(double From, double To, double Low, double High, int Filling, int Name);
