using System.CommandLine;
using System.Text;
using LinkMargin.Cli.Invoking;

namespace LinkMargin.Cli.Completion;

/// <summary>The manual page: the text of --help with the man macros of roff (man(7)).</summary>
internal static class ManPage
{
    /// <summary>The page.</summary>
    /// <param name="root">All commands.</param>
    /// <param name="version">The program's version.</param>
    public static string Of(RootCommand root, string version)
    {
        var page = new StringBuilder();
        Line($".TH LINKMARGIN 1 \"\" \"LinkMargin {version}\" \"User Commands\"");
        Line(".SH NAME");
        Line("linkmargin \\- predict whether a game controller keeps its link to the console");
        Line(".SH SYNOPSIS");
        Line(".B linkmargin");
        Line(".I COMMAND");
        Line("[\\fIOPTIONS\\fR]");
        Line(".SH DESCRIPTION");
        Line(Text(FirstPart(root.Description)));
        Line(".SH COMMANDS");
        foreach (Command command in root.Subcommands.Where(command => !command.Hidden))
        {
            Line($".SS \"{Text(string.Join(' ', [command.Name, .. command.Arguments.Select(argument => argument.Name)]))}\"");
            Line(Text(FirstPart(command.Description)));
            Options(command.Options);
        }

        Line(".SH OPTIONS OF EVERY COMMAND");
        Options(root.Options.Where(option => option.Recursive));
        Line(".SH EXIT STATUS");
        Line(Text(ExitCodes.Explained));
        Line(".SH SEE ALSO");
        Line(Text("'linkmargin guide' lists the topics of the guide, 'linkmargin guide TOPIC' prints one."));
        return page.ToString();

        void Options(IEnumerable<Option> options)
        {
            foreach (Option option in options.Where(option => !option.Hidden && option.Description is { Length: > 0 }))
            {
                Line(".TP");
                Line($"\\fB{Text(option.Name)}\\fR{(option.Arity.MaximumNumberOfValues > 0 ? $" \\fI{Text(option.HelpName ?? "VALUE")}\\fR" : "")}");
                Line(Text(FirstPart(option.Description)));
            }
        }

        void Line(string text) => page.Append(text).Append('\n');
    }

    // Exit codes follow a blank line; they have their own section.
    private static string FirstPart(string? text) => (text ?? "").Split("\n\n")[0];

    // roff escapes: a backslash anywhere, a period or apostrophe at the start of a line; a hyphen as minus, so that it can be copied.
    private static string Text(string text)
    {
        string escaped = text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal).Replace('\n', ' ').Replace("\"", "\\(dq", StringComparison.Ordinal);
        return escaped.StartsWith('.') || escaped.StartsWith('\'') ? "\\&" + escaped : escaped;
    }
}
