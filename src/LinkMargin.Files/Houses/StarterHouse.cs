using LinkMargin.Files.Resources;

namespace LinkMargin.Files.Houses;

/// <summary>A small invented house with a comment at every step, for somebody to change into their own.</summary>
public static class StarterHouse
{
    /// <summary>The house file.</summary>
    public static string Text => EmbeddedText.Read("houses/starter.yaml");
}
