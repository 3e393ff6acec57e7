using System.CommandLine;
using System.CommandLine.Parsing;
using LinkMargin.Files.Problems;

namespace LinkMargin.Cli.Options;

/// <summary>Which margin a map shows.</summary>
internal static class ShowOption
{
    private const string Name = "--show";
    private const string Counted = "counted";
    private const string Median = "median";

    /// <summary>Makes one.</summary>
    public static Option<string?> Create() => new(Name)
    {
        Description = "counted (the default): the margin to count on; median: the margin that is as likely too high as too low. What is "
            + "hatched lacks the required margin by the one to count on, either way.",
        HelpName = $"{Counted}|{Median}",
        CustomParser = Read,
    };

    /// <summary>Whether it is the median.</summary>
    public static bool IsMedian(ParseResult parse, Option<string?> option) => parse.GetValue(option) == Median;

    private static string? Read(ArgumentResult result)
    {
        string word = result.Tokens[0].Value;
        if (word is Counted or Median)
        {
            return word;
        }

        result.AddError($"there is no margin {Quote.Of(word)} for {Name}; {NearestWord.Advice(word, [Counted, Median])}");
        return null;
    }
}
