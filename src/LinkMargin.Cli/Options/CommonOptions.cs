using System.CommandLine;

namespace LinkMargin.Cli.Options;

/// <summary>The options every command has.</summary>
internal sealed class CommonOptions
{
    /// <summary>One JSON document instead of text.</summary>
    public Option<bool> Json { get; } = Flag("--json", "Print one JSON document on standard output instead of text.");

    /// <summary>A folder of the user's own tables.</summary>
    public Option<string?> Materials { get; } = Text(
        "--materials", "DIR", "Folder with materials.yaml, floors.yaml, radios.yaml, margins.yaml, spreads.yaml, cables.yaml; for a missing file, the built-in one is used.");

    /// <summary>Allows overwriting other programs' files.</summary>
    public Option<bool> Force { get; } = Flag("--force", "Overwrite files that this program did not write.");

    /// <summary>All of them.</summary>
    public IEnumerable<Option> All => [Json, Materials, Force];

    /// <summary>An option without a value.</summary>
    public static Option<bool> Flag(string name, string description) =>
        new(name) { Description = description, Arity = ArgumentArity.Zero };

    /// <summary>An option with one value.</summary>
    public static Option<string?> Text(string name, string stands, string description) =>
        new(name) { Description = description, HelpName = stands };
}
