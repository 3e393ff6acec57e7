using System.CommandLine;
using LinkMargin.Cli.Guide;
using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Bundles;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Tables;
using LinkMargin.Plots.Printing;

namespace LinkMargin.Cli.Completion;

/// <summary>
/// Candidates for the end of a command line: commands, options, and names from the house file on that line. Where a file name
/// belongs there are none, so that the shell completes files.
/// </summary>
/// <param name="root">All commands.</param>
/// <param name="invocation">Where relative names start from.</param>
internal sealed class CompletionWords(RootCommand root, Invocation invocation)
{
    /// <summary>The candidates for the last word, in order; empty if there are none.</summary>
    /// <param name="typed">The words after the program's name, as the shell has them; the last one is unfinished or empty.</param>
    public IReadOnlyList<string> For(IReadOnlyList<string> typed)
    {
        string[] words = [.. typed.Select(Unquoted)];
        string last = words.Length == 0 ? "" : words[^1], before = words.Length < 2 ? "" : words[^2];
        Command? command = words.Length < 2 ? null : root.Subcommands.FirstOrDefault(known => known.Name == words[0]);
        IEnumerable<string> candidates = command is null
            ? words.Length < 2 ? root.Subcommands.Where(known => !known.Hidden).Select(known => known.Name) : []
            : TakesWord(command, before) is { } option ? ValuesOf(option, words)
            : last.StartsWith('-') ? OptionsOf(command).Select(known => known.Name)
            : ArgumentsOf(command);
        return [.. candidates.Where(candidate => candidate.StartsWith(last, StringComparison.OrdinalIgnoreCase)).Distinct()];
    }

    private IEnumerable<Option> OptionsOf(Command command) => command.Options.Concat(root.Options.Where(option => option.Recursive)).DistinctBy(option => option.Name);

    private Option? TakesWord(Command command, string word) =>
        OptionsOf(command).FirstOrDefault(option => option.Name == word && option.Arity.MaximumNumberOfValues > 0);

    private IEnumerable<string> ValuesOf(Option option, string[] words) => option.Name switch
    {
        "--spot" => Names(words, house => house.Spots.Select(spot => spot.Name)),
        "--seat" => Names(words, house => house.Seats.Select(seat => seat.Name)),
        "--occupied" => Names(words, house => house.Seats.Select(seat => seat.Name).Prepend("none").Prepend("all")),
        "--level" => Names(words, house => house.Levels.Select(level => level.Name)),
        "--model" => ["full", "direct"],
        "--show" => ["count-on", "median"],
        "--paper" => [PaperSize.A4.Name, PaperSize.Letter.Name],
        _ => [],
    };

    private static IEnumerable<string> ArgumentsOf(Command command) => command.Name switch
    {
        "guide" => GuideTopic.All.Select(topic => topic.Name),
        "completion" => CompletionScripts.Shells,
        "materials" => Rows(),
        _ => [],
    };

    private static IEnumerable<string> Rows() => MaterialTablesFile.ReadBuiltIn().Tables is { } tables
        ? [.. tables.Materials.Keys, .. tables.BuildUps.Keys, .. tables.Radios.Keys]
        : [];

    // Names from the first word that is a house file or a bundle; one with errors gives none.
    private IEnumerable<string> Names(string[] words, Func<House, IEnumerable<string>> names)
    {
        foreach (string path in words[1..^1].Where(word => !word.StartsWith('-')).Select(PathOf).Where(File.Exists))
        {
            if (HouseIn(path) is { } house)
            {
                return names(house);
            }
        }

        return [];
    }

    private static House? HouseIn(string path)
    {
        MaterialTables tables = MaterialTablesFile.ReadBuiltIn().Tables!;
        try
        {
            if (!Bundle.IsAt(path))
            {
                return HouseFile.Read(path, tables).House;
            }

            Bundle bundle = Bundle.Read(path);
            return HouseFile.Parse(bundle.House, path, MaterialTablesFile.ReadTexts(path, bundle.Tables).Tables ?? tables).House;
        }
        catch (BundleFaultException)
        {
            return null;
        }
    }

    private string PathOf(string word) => Path.Combine(
        invocation.Folder,
        word.StartsWith("~/", StringComparison.Ordinal) ? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), word[2..]) : word);

    // A shell passes words as typed: with a quotation mark that may still be open, or with escaped spaces.
    private static string Unquoted(string word)
    {
        if (word.Length > 0 && word[0] is '"' or '\'')
        {
            char mark = word[0];
            return word[1..].TrimEnd(mark);
        }

        return OperatingSystem.IsWindows() ? word : word.Replace("\\", "", StringComparison.Ordinal);
    }
}
