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
