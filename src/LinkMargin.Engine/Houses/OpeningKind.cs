namespace LinkMargin.Engine.Houses;

/// <summary>What an opening is; decides how a plan draws it, never what it costs.</summary>
public enum OpeningKind
{
    /// <summary>A door, drawn with its swing.</summary>
    Door,

    /// <summary>A window, drawn with its glass line.</summary>
    Window,

    /// <summary>A passage without a leaf.</summary>
    Gap,
}
