using System.Text;

namespace LinkMargin.Cli.Guide;

/// <summary>One topic of the user's guide: a Markdown file of this folder that is built into the program.</summary>
/// <param name="Name">What a user types, and the file's name without its extension.</param>
/// <param name="About">What it explains, in a few words.</param>
internal sealed record GuideTopic(string Name, string About)
{
    /// <summary>All topics, in reading order.</summary>
    public static IReadOnlyList<GuideTopic> All { get; } =
    [
        new("house-file", "describe a house: every key, with defaults"),
        new("budget", "read what 'linkmargin explain' prints, line by line"),
        new("uncertainty", "how certain a margin is, and what that means for the choice"),
        new("measuring", "measure your own house and fit the losses to it"),
        new("report", "the report to hand over: what its words and figures mean"),
        new("model", "what the radio model includes, leaves out and rests on"),
        new("page", "try places and changes in a browser, and save them"),
        new("commands", "commands, options, exit codes, files written"),
        new("json", "the JSON documents, CSV and GeoJSON, key by key"),
        new("tables", "materials, floors and radios, and how to change them"),
        new("licences", "licences of what is built into the program"),
    ];

    /// <summary>The text of the topic. A missing file is an error of the build.</summary>
    public string Markdown()
    {
        string resource = $"guide/{Name}.md";
        using Stream stream = typeof(GuideTopic).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The program holds no text named '{resource}'.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
