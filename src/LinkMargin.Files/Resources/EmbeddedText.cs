using System.Text;

namespace LinkMargin.Files.Resources;

/// <summary>Texts that are built into the program.</summary>
internal static class EmbeddedText
{
    /// <summary>The text of a resource of this assembly; a missing resource is an error of the build.</summary>
    public static string Read(string name)
    {
        using Stream stream = typeof(EmbeddedText).Assembly.GetManifestResourceStream(name)
            ?? throw new ArgumentException($"The program holds no text named '{name}'.", nameof(name));
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}

/// <summary>
/// The house file that comes with the program: an invented house, small enough to read through and arranged so that no
/// spot is best for every seat. It is the house of <c>demo</c>, and a starting point for the user's own file.
/// </summary>
public static class DemoHouse
{
    /// <summary>The text of the file, as a person would write it.</summary>
    public static string Text { get; } = EmbeddedText.Read("houses/demo.yaml");
}

/// <summary>A small invented house with a comment at every step, for users to change into their own.</summary>
public static class StarterHouse
{
    /// <summary>The house file.</summary>
    public static string Text => EmbeddedText.Read("houses/starter.yaml");
}

/// <summary>The JSON Schema of the house file (draft 2020-12), for completion and checks in editors.</summary>
public static class HouseSchema
{
    /// <summary>The file name that the first line of the starter house refers to.</summary>
    public const string FileName = "house.schema.json";

    /// <summary>The schema.</summary>
    public static string Text => EmbeddedText.Read("houses/house.schema.json");
}

/// <summary>
/// Invented measurements of the built-in house, to try <c>fit</c> with: some walls have a higher loss than in the tables, one link
/// was not heard, one was measured twice, and one was written down wrong.
/// </summary>
public static class DemoMeasurements
{
    /// <summary>The text of the file.</summary>
    public static string Text { get; } = EmbeddedText.Read("measurements/demo-measurements.csv");
}
