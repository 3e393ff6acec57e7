using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Json;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>The tables in use, or one row in full.</summary>
internal static class MaterialsCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string?> name = new("NAME")
        {
            Description = "a row to show in full, a kind of rows to list, or a word to search for; without it, an overview",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<bool> all = CommonOptions.Flag("--all", "Every row of every table, with figures and sources.");
        var command = new Command("materials", "Show the tables of materials, floor build-ups, radios, margins and spreads, with sources." + ExitCodes.Of()) { name, all };
        command.SetAction(parse =>
        {
            MaterialTables tables = LoadedTables.Read(invocation, parse, common);
            string? wanted = parse.GetValue(name);
            bool isAll = parse.GetValue(all), isJson = parse.GetValue(common.Json);
            if (wanted is not null && isAll)
            {
                throw new CannotBeDoneException($"{all.Name} lists every row; omit '{wanted}' or {all.Name}");
            }

            (MaterialTables rows, Action<TextWriter, int> text) = (wanted, isAll) switch
            {
                (null, true) => (tables, new TablesText(tables).Write),
                (null, false) => (tables, (output, width) => RowsText.WriteOverview(RowKind.Of(tables), output, width)),
                (not null, _) => Wanted(tables, wanted),
            };
            if (isJson)
            {
                invocation.Output.WriteLine(JsonText.Of(TablesDocument.Of(rows)));
            }
            else
            {
                text(invocation.Output, invocation.Width);
            }

            return ExitCodes.Done;
        });
        return command;
    }

    // An exact row name wins over a kind of row, and a misspelt row name over a trade term.
    private static (MaterialTables Rows, Action<TextWriter, int> Text) Wanted(MaterialTables tables, string wanted)
    {
        string[] names = [.. tables.Materials.Keys, .. tables.BuildUps.Keys, .. tables.Radios.Keys];
        if (names.Contains(wanted))
        {
            MaterialTables one = tables.Only([wanted]);
            return (one, (output, width) => WriteRows(one, output, width));
        }

        if (RowKind.Of(tables).FirstOrDefault(kind => kind.Name == wanted) is { } listed)
        {
            return (listed.Rows, new TablesText(listed.Rows).Write);
        }

        bool isSlip = wanted.Contains('-', StringComparison.Ordinal) && NearestWord.Find(wanted, names) is not null;
        IReadOnlyList<FoundRow> found = isSlip ? [] : new RowSearch(tables).Find(wanted);
        return found.Count > 0
            ? (tables.Only([.. found.Select(row => row.Name)]), (output, width) => RowsText.WriteFound(wanted, found, output, width))
            : throw new CannotBeDoneException($"the tables have no row '{wanted}'; {NearestWord.Advice(wanted, names, "'linkmargin materials'")}");
    }

    private static void WriteRows(MaterialTables tables, TextWriter output, int width)
    {
        foreach (Material row in tables.Materials.Values)
        {
            RowText.Write(row, output, width);
        }

        foreach (FloorBuildUp row in tables.BuildUps.Values)
        {
            RowText.Write(row, output, width);
        }

        foreach (Radio row in tables.Radios.Values)
        {
            RowText.Write(row, output, width);
        }
    }
}
