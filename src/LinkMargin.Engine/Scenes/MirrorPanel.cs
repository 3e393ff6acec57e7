namespace LinkMargin.Engine.Scenes;

/// <summary>One panel of a mirror: from and to along its plane, heights, material, name, and what stands in it.</summary>
internal sealed record MirrorPanel(
    double From, double To, double Low, double High, int Material, int Name, IReadOnlyList<OpeningPanel> Openings);
