namespace LinkMargin.Files.Houses;

/// <summary>
/// The house file that comes with the program: an invented house, small enough to read through and so arranged that no
/// spot is best for every seat. It is the house of <c>demo</c>, and a start for a file of one's own.
/// </summary>
public static class DemoHouse
{
    private const string Resource = "houses/demo.yaml";

    /// <summary>The text of the file, as a person would write it.</summary>
    public static string Text { get; } = Read();

    private static string Read()
    {
        using Stream stream = typeof(DemoHouse).Assembly.GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException($"The resource '{Resource}' is missing from this build.");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
