using System.CommandLine;
using System.CommandLine.Parsing;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Cli.Options;

/// <summary>Share of cases in which the margin to count on is reached.</summary>
internal static class ConfidenceOption
{
    private const string Name = "--confidence";

    private static readonly QuantityRange Range = new(0.5, 0.999, "");

    /// <summary>Makes the option.</summary>
    public static Option<double?> Create() => new(Name)
    {
        Description = FormattableString.Invariant(
            $"Share of cases in which the margin to count on is reached: {Range.Least} to {Range.Greatest}; default {UncertaintyBasis.UsualConfidence}."),
        HelpName = "SHARE",
        CustomParser = Read,
    };

    /// <summary>The share requested.</summary>
    public static double Of(ParseResult parse, Option<double?> option) => parse.GetValue(option) ?? UncertaintyBasis.UsualConfidence;

    private static double? Read(ArgumentResult result)
    {
        string text = result.Tokens[0].Value;
        Parsed read = ShareText.Parse(text, Range);
        if (read.Fault is null)
        {
            return read.Value;
        }

        result.AddError($"{Name} {Quote.Of(text)} {read.Fault}");
        return null;
    }
}
