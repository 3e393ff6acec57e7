using System.Text.RegularExpressions;

namespace LinkMargin.Files.Saving;

/// <summary>Writes names so that YAML accepts them everywhere, also in braces and lists.</summary>
internal static partial class YamlWord
{
    private static readonly string[] Meant = ["true", "false", "null", "yes", "no", "on", "off", "y", "n"];

    /// <summary>A name, in quotes if needed.</summary>
    public static string Of(string name) =>
        Plain().IsMatch(name) && !Meant.Contains(name.ToLowerInvariant()) ? name : $"'{name.Replace("'", "''", StringComparison.Ordinal)}'";

    [GeneratedRegex("^[A-Za-z]([A-Za-z0-9 ._/()|-]*[A-Za-z0-9)])?$", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();
}
