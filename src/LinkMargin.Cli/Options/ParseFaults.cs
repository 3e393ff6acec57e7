using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using LinkMargin.Files.Problems;

namespace LinkMargin.Cli.Options;

/// <summary>
/// Finds what is wrong with the typed words and reports it in one sentence with the nearest valid word. The parser itself would
/// print a page of help, and takes a mistyped option for a file or a value.
/// </summary>
/// <param name="parse">What the parser made of the words.</param>
/// <param name="words">The words.</param>
internal sealed class ParseFaults(ParseResult parse, IReadOnlyList<string> words)
{
    private readonly Command command = parse.CommandResult.Command;

    /// <summary>The first fault; null if there is none.</summary>
    public string? First()
    {
        if (parse.Action is HelpAction or VersionAction)
        {
            return null;
        }

        return MistypedOption()
            ?? FlagWithValue()
            ?? UnknownWord()
            ?? WrongCount()
            ?? EmptyValue()
            ?? Missing()
            ?? EmptyArgument()
            ?? (parse.Errors.Count > 0 ? parse.Errors[0].Message : null);
    }

    private bool AtRoot => command is RootCommand;

    private string CommandWords => AtRoot ? "linkmargin" : $"linkmargin {command.Name}";

    private IEnumerable<Option> Known => command.Options.Concat(parse.RootCommandResult.Command.Options.Where(o => o.Recursive));

    // After '--' no word is an option, whatever it starts with.
    private bool HasEndOfOptions => words.Contains("--");

    private string? MistypedOption()
    {
        if (HasEndOfOptions)
        {
            return null;
        }

        string? word = parse.CommandResult.Children.OfType<ArgumentResult>().SelectMany(a => a.Tokens).Select(t => t.Value)
            .Concat(parse.UnmatchedTokens)
            .FirstOrDefault(LooksLikeOption);
        if (word is not null)
        {
            return UnknownOption(word);
        }

        foreach (OptionResult given in GivenOptions())
        {
            if (given.Tokens.FirstOrDefault(t => t.Value.StartsWith("--", StringComparison.Ordinal)) is { } value)
            {
                return Known.Any(o => o.Name == value.Value) ? NeedsValue(given.Option) : UnknownOption(value.Value);
            }
        }

        return null;
    }

    private string? FlagWithValue() => Known
        .Where(o => o.Arity.MaximumNumberOfValues == 0 && words.Any(w => w.StartsWith(o.Name + "=", StringComparison.Ordinal)))
        .Select(o => $"{o.Name} takes no value; write {o.Name} alone")
        .FirstOrDefault();

    private string? UnknownWord()
    {
        if (parse.UnmatchedTokens.Count == 0)
        {
            return null;
        }

        string word = parse.UnmatchedTokens[0];
        return AtRoot
            ? $"there is no command {Quote.Of(word)}; {Advice(word, [.. command.Subcommands.Select(c => c.Name)])}"
            : $"{Quote.Of(word)} is one word too many for '{CommandWords}'; put a name or length with spaces in quotes";
    }

    private string? WrongCount() => GivenOptions()
        .Select(given => given switch
        {
            { Option.Arity.MinimumNumberOfValues: > 0, Tokens.Count: 0 } => NeedsValue(given.Option),
            { Option.Arity.MaximumNumberOfValues: <= 1, IdentifierTokenCount: > 1 } => $"{given.Option.Name} is given {given.IdentifierTokenCount} times; give it once",
            _ => null,
        })
        .FirstOrDefault(fault => fault is not null);

    // A script with an unset variable passes an empty word; as a path it would mean the current folder.
    private string? EmptyValue() => GivenOptions()
        .Where(given => given.Tokens.Any(IsBlank))
        .Select(given => NeedsValue(given.Option, ", not an empty word"))
        .FirstOrDefault();

    private string? EmptyArgument() => parse.CommandResult.Children.OfType<ArgumentResult>()
        .Where(given => given.Tokens.Any(IsBlank))
        .Select(given => $"{given.Argument.Name} of '{CommandWords}' is an empty word; write {given.Argument.Description}")
        .FirstOrDefault();

    private static bool IsBlank(Token token) => string.IsNullOrWhiteSpace(token.Value);

    private string? Missing()
    {
        if (AtRoot)
        {
            return $"name a command: {string.Join(", ", command.Subcommands.Select(c => c.Name))}; 'linkmargin --help' describes them";
        }

        return parse.CommandResult.Children.OfType<ArgumentResult>()
            .Where(a => a.Tokens.Count == 0 && a.Argument.Arity.MinimumNumberOfValues > 0)
            .Select(a => $"'{CommandWords}' needs {a.Argument.Name}: {a.Argument.Description}{Swallowed()}")
            .FirstOrDefault();
    }

    // An option that takes several words may have swallowed the argument.
    private string Swallowed() => GivenOptions().FirstOrDefault(given => given.Tokens.Count > 1) is { } given
        ? $"; put it before {given.Option.Name}, which takes all following words"
        : "";

    private IEnumerable<OptionResult> GivenOptions() =>
        parse.CommandResult.Children.Concat(parse.RootCommandResult.Children).OfType<OptionResult>().Where(o => !o.Implicit);

    private string UnknownOption(string word)
    {
        string name = word.Split('=')[0];
        return $"there is no option {Quote.Of(name)} for '{CommandWords}'; {Advice(name, [.. Known.Select(o => o.Name)])}";
    }

    private static string NeedsValue(Option option, string butNot = "") =>
        $"{option.Name} needs {option.HelpName ?? "a value"} after it{butNot}: {FirstSentence(option.Description)}";

    private static string FirstSentence(string? description) => (description ?? "").Split(". ")[0].TrimEnd('.');

    // A negative number is a (wrong) value; a lone '-' is a name.
    private static bool LooksLikeOption(string word) => word.Length > 1 && word[0] == '-' && !char.IsAsciiDigit(word[1]) && word[1] != '.';

    private static string Advice(string word, IReadOnlyCollection<string> candidates) => NearestWord.Advice(word, candidates);
}
