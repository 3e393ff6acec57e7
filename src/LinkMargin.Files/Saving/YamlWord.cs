using System.Text.RegularExpressions;

namespace LinkMargin.Files.Saving;

/// <summary>Names as YAML takes them anywhere, in braces and lists too.</summary>
internal static partial class YamlWord
{
    private static readonly string[] Meant = ["true", "false", "null", "yes", "no", "on", "off", "y", "n"];

    /// <summary>A name, in quotes where it needs them.</summary>
    public static string Of(string name) =>
        Plain().IsMatch(name) && !Meant.Contains(name.ToLowerInvariant()) ? name : $"'{name.Replace("'", "''", StringComparison.Ordinal)}'";

    [GeneratedRegex("^[A-Za-z]([A-Za-z0-9 ._/()|-]*[A-Za-z0-9)])?$", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();
}
