using LinkMargin.Files.Resources;

namespace LinkMargin.Files.Houses;

/// <summary>
/// The house file that comes with the program: an invented house, small enough to read through and so arranged that no
/// spot is best for every seat. It is the house of <c>demo</c>, and a start for a file of one's own.
/// </summary>
public static class DemoHouse
{
    /// <summary>The text of the file, as a person would write it.</summary>
    public static string Text { get; } = EmbeddedText.Read("houses/demo.yaml");
}
