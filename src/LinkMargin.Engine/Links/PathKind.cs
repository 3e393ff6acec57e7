namespace LinkMargin.Engine.Links;

/// <summary>The way the energy takes.</summary>
public enum PathKind
{
    /// <summary>The straight line.</summary>
    Direct,
}
