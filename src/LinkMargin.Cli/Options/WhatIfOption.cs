using System.CommandLine;
using LinkMargin.Files.Edits;

namespace LinkMargin.Cli.Options;

/// <summary>Changes of the house for one run.</summary>
internal static class WhatIfOption
{
    /// <summary>The option's name.</summary>
    public const string Name = "--what-if";

    /// <summary>Makes the option.</summary>
    public static Option<string[]?> Create() => new(Name)
    {
        Description = "Change the house for this run only; may be repeated, and the changes are made in order: "
            + string.Join("; ", EditText.Forms.Select(form => $"'{form}'")) + ". Lengths are written as in the house file.",
        HelpName = "EDIT",
        Arity = ArgumentArity.OneOrMore,
    };
}
