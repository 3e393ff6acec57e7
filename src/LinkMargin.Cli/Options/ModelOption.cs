using System.CommandLine;
using System.CommandLine.Parsing;
using LinkMargin.Engine.Links;
using LinkMargin.Files.Problems;

namespace LinkMargin.Cli.Options;

/// <summary>How much of the physics a command includes.</summary>
internal static class ModelOption
{
    private const string Name = "--model";

    private static readonly Dictionary<string, ModelDepth> Words = new(StringComparer.Ordinal)
    {
        ["full"] = ModelDepth.Full,
        ["direct"] = ModelDepth.Direct,
    };

    /// <summary>Makes the option.</summary>
    public static Option<ModelDepth?> Create() => new(Name)
    {
        Description = "full (the default): direct, diffracted, reflected and diffuse paths and the player's body; "
            + "direct: the direct path with table losses.",
        HelpName = "full|direct",
        CustomParser = Read,
    };

    /// <summary>The model requested.</summary>
    public static ModelDepth Of(ParseResult parse, Option<ModelDepth?> option) => parse.GetValue(option) ?? ModelDepth.Full;

    private static ModelDepth? Read(ArgumentResult result)
    {
        string word = result.Tokens[0].Value;
        if (Words.TryGetValue(word, out ModelDepth depth))
        {
            return depth;
        }

        result.AddError($"there is no model {Quote.Of(word)} for {Name}; {NearestWord.Advice(word, Words.Keys)}");
        return null;
    }
}
