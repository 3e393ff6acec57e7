using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses;

/// <summary>Says when a list is longer than a house can be worked through with.</summary>
internal static class TooMany
{
    /// <summary>Records a mistake where there are more than the most.</summary>
    public static void Check(Source source, MappingReader group, string key, int count, int most)
    {
        if (count > most)
        {
            source.Error(group.MarkOf(key), FormattableString.Invariant($"{key}: there are {count}, and at most {most} are worked through; leave some out"));
        }
    }
}
