using LinkMargin.Engine.Links;

namespace LinkMargin.Reports.Words;

/// <summary>What a model includes, in words.</summary>
internal static class ModelWords
{
    /// <summary>For a caption.</summary>
    public static string Of(ModelDepth depth) => depth == ModelDepth.Direct
        ? "direct path and table losses only"
        : "direct, diffracted, reflected and diffuse paths and the player's body";
}
