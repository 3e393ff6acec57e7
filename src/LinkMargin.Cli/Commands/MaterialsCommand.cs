using System.CommandLine;
using LinkMargin.Cli.Options;
using LinkMargin.Cli.Output;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Json;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;

namespace LinkMargin.Cli.Commands;

/// <summary>The tables in use, or one row of them in full.</summary>
internal static class MaterialsCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string?> name = new("NAME")
        {
            Description = "one material, floor build-up or radio to show in full; all of them where it is left out",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command("materials", "The tables of materials, floor build-ups, radios, margins and spreads in use, with their sources." + ExitCodes.Of()) { name };
        command.SetAction(parse =>
        {
            MaterialTables tables = LoadedTables.Read(invocation, parse, common);
            string? wanted = parse.GetValue(name);
            if (wanted is not null)
            {
                tables = Only(tables, wanted);
            }

            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(TablesDocument.Of(tables)));
            }
            else if (wanted is null)
            {
                new TablesText(tables).Write(invocation.Output, invocation.Width);
            }
            else
            {
                WriteRows(tables, invocation.Output, invocation.Width);
            }

            return ExitCodes.Done;
        });
        return command;
    }

    private static MaterialTables Only(MaterialTables tables, string name)
    {
        string[] names = [.. tables.Materials.Keys, .. tables.BuildUps.Keys, .. tables.Radios.Keys];
        return names.Contains(name)
            ? new MaterialTables(Only(tables.Materials, name), Only(tables.BuildUps, name), Only(tables.Radios, name)) { Files = tables.Files }
            : throw new CannotBeDoneException(
                $"the tables have no row {Quote.Of(name)}; {NearestWord.Advice(name, names, "'linkmargin materials'")}");
    }

    private static Dictionary<string, T> Only<T>(IReadOnlyDictionary<string, T> rows, string name) =>
        rows.TryGetValue(name, out T? row) ? new() { [name] = row } : [];

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
