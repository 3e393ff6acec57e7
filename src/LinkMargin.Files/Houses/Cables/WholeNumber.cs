using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Cables;

/// <summary>Reads whole numbers.</summary>
internal static class WholeNumber
{
    /// <summary>The number under a key; null if there is none or an error was reported.</summary>
    public static int? Optional(Source source, MappingReader group, string key, QuantityRange range)
    {
        if (group.OptionalNumber(key, Quantity.Plain, range) is not { } number)
        {
            return null;
        }

        if (number != Math.Floor(number))
        {
            source.Error(group.MarkOf(key), $"{key}: write a whole number");
            return null;
        }

        return (int)number;
    }
}
