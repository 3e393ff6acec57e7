using System.CommandLine;
using System.CommandLine.Parsing;
using LinkMargin.Files.Problems;

namespace LinkMargin.Cli.Options;

/// <summary>Which margin a map shows.</summary>
internal static class ShowOption
{
    private const string Name = "--show";
    private const string CountOn = "count-on";
    private const string FormerWord = "counted"; // of older versions, still accepted
    private const string Median = "median";

    /// <summary>Makes the option.</summary>
    public static Option<string?> Create() => new(Name)
    {
        Description = "count-on (the default): the margin to count on; median: the margin that is as likely too high as too low. Hatched in both: "
            + "the margin to count on is below the required margin.",
        HelpName = $"{CountOn}|{Median}",
        CustomParser = Read,
    };

    /// <summary>Whether the map shows the median.</summary>
    public static bool IsMedian(ParseResult parse, Option<string?> option) => parse.GetValue(option) == Median;

    private static string? Read(ArgumentResult result)
    {
        string word = result.Tokens[0].Value;
        if (word is CountOn or Median or FormerWord)
        {
            return word;
        }

        result.AddError($"there is no margin {Quote.Of(word)} for {Name}; {NearestWord.Advice(word, [CountOn, Median])}");
        return null;
    }
}
