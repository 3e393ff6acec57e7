using System.Text.RegularExpressions;

namespace LinkMargin.Files.Tests.Quantities;

/// <summary>Lengths and areas of one system, found in text that should hold none of them.</summary>
internal static partial class LengthsIn
{
    /// <summary>Of metres.</summary>
    public static Regex Metres => MetricLength();

    /// <summary>Of feet and inches.</summary>
    public static Regex Feet => LengthInFeet();

    [GeneratedRegex(@"\d\s?(m|cm|mm|m2|m²)(?![\w²])", RegexOptions.CultureInvariant)]
    private static partial Regex MetricLength();

    [GeneratedRegex(@"\d\s?(ft|in|sq ft)\b", RegexOptions.CultureInvariant)]
    private static partial Regex LengthInFeet();
}
