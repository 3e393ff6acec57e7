namespace LinkMargin.Engine.Scenes;

/// <summary>One panel of a mirror: from and to along its plane, heights, material (-1: none), name, and what stands in it.</summary>
internal sealed record MirrorPanel(
    double From, double To, Rise Rise, int Material, int Name, OpeningPanel[] Openings);
