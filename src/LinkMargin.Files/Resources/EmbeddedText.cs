using System.Text;

namespace LinkMargin.Files.Resources;

/// <summary>Texts that are built into the program.</summary>
internal static class EmbeddedText
{
    /// <summary>The text of a resource of this assembly; a name that does not exist is a fault of the build.</summary>
    public static string Read(string name)
    {
        using Stream stream = typeof(EmbeddedText).Assembly.GetManifestResourceStream(name)
            ?? throw new ArgumentException($"The program holds no text named '{name}'.", nameof(name));
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}

/// <summary>
/// The house file that comes with the program: an invented house, small enough to read through and so arranged that no
/// spot is best for every seat. It is the house of <c>demo</c>, and a start for a file of one's own.
/// </summary>
public static class DemoHouse
{
    /// <summary>The text of the file, as a person would write it.</summary>
    public static string Text { get; } = EmbeddedText.Read("houses/demo.yaml");
}

/// <summary>A small invented house with a comment at every step, for somebody to change into their own.</summary>
public static class StarterHouse
{
    /// <summary>The house file.</summary>
    public static string Text => EmbeddedText.Read("houses/starter.yaml");
}

/// <summary>The JSON Schema of the house file (draft 2020-12), for editors that complete and underline.</summary>
public static class HouseSchema
{
    /// <summary>The name the starter house's first line looks for beside it.</summary>
    public const string FileName = "house.schema.json";

    /// <summary>The schema.</summary>
    public static string Text => EmbeddedText.Read("houses/house.schema.json");
}

/// <summary>
/// Invented measurements of the built-in house, to try <c>fit</c> with: some walls lose more than the tables say, one link was not
/// heard, one was read twice, and one was written down wrong.
/// </summary>
public static class DemoMeasurements
{
    /// <summary>The text of the file.</summary>
    public static string Text { get; } = EmbeddedText.Read("measurements/demo-measurements.csv");
}
