namespace LinkMargin.Engine.Links;

/// <summary>How the loss of a crossing came about.</summary>
public enum LossBasis
{
    /// <summary>The listed loss, at whichever angle it is met.</summary>
    Listed,

    /// <summary>The listed loss head on; the change with the angle from the layers.</summary>
    HeadOnAndLayers,

    /// <summary>The listed loss as a mean over angles; the change with the angle from the layers.</summary>
    MeanAndLayers,

    /// <summary>The loss of the thing itself, where the listed one counts the way round it in.</summary>
    Through,

    /// <summary>Amplitudes of what passes through joists and between them, by the share of the path's width they cover.</summary>
    JoistShare,
}
