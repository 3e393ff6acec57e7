using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>Reads a house file for a command: problems are reported, an error ends the command.</summary>
internal static class HouseLoading
{
    /// <summary>Reads a house file.</summary>
    /// <param name="invocation">Where messages go.</param>
    /// <param name="tables">The tables that its names are looked up in.</param>
    /// <param name="typed">The file as typed.</param>
    /// <param name="whatIf">Edits of the house for this run; null if there are none.</param>
    /// <param name="fitted">A file of fitted losses; null to use those of a bundle, or else the table losses.</param>
    /// <param name="asMeasured">Whether the fitted losses of a bundle apply; false for a fit, which starts from the table losses.</param>
    public static LoadedHouse Read(
        Invocation invocation, MaterialTables tables, string typed, string[]? whatIf = null, string? fitted = null, bool asMeasured = true)
    {
        HouseParseResult parsed = ReadFile(invocation, tables, typed);
        ProblemLines.Write(parsed.Problems, invocation.Error, invocation.Width);
        return parsed.House is null
            ? throw new CannotBeDoneException(ProblemLines.FixFirst(typed, parsed.Problems))
            : Fit(
                Edit(Of(parsed, tables), whatIf, invocation),
                fitted is null && asMeasured && OpenedBundle.Of(invocation, typed) is { Fitted: { } inside }
                    ? FittedOption.Read(invocation, typed, inside, parsed.House)
                    : FittedOption.Read(invocation, fitted, parsed.House));
    }

    /// <summary>Reads a house file and returns the house or its errors.</summary>
    public static HouseParseResult ReadFile(Invocation invocation, MaterialTables tables, string typed) =>
        OpenedBundle.Of(invocation, typed) is { } bundle
            ? HouseFile.Parse(bundle.House, $"{typed}: {bundle.HouseName}", tables)
            : HouseFile.Read(invocation.Files.ToRead(typed), tables);

    /// <summary>The house of a file without errors.</summary>
    public static LoadedHouse Of(HouseParseResult parsed, MaterialTables tables) => new(
        parsed.House ?? throw new ArgumentException("This file gave no house.", nameof(parsed)), parsed.Unit, tables);

    /// <summary>The same house with edits applied in order; warnings about them are reported.</summary>
    public static LoadedHouse Edit(LoadedHouse loaded, string[]? whatIf, Invocation invocation)
    {
        House edited = loaded.House;
        List<string> words = [], texts = [];
        List<string> faults = [];
        foreach (string typed in whatIf ?? [])
        {
            try
            {
                WrittenEdit written = new EditText(edited, loaded.Tables, loaded.Unit).Read(typed);
                words.Add(ChangeWords.Of(written.Edit, edited, loaded.Unit));
                edited = written.Edit.ApplyTo(edited);
                texts.Add(written.Text);
                if (written.Warning is { } warning)
                {
                    WordWrap.WriteMessage($"{WhatIfOption.Name} {Quote.Of(written.Text)}: {warning}", invocation.Error, invocation.Width);
                }
            }
            catch (EditFaultException fault)
            {
                faults.Add($"{WhatIfOption.Name} {Quote.Of(typed)} {fault.Message}");
            }
        }

        return faults.Count > 0
            ? throw new CannotBeDoneException(faults)
            : loaded with { House = edited, WhatIf = words, WrittenEdits = texts };
    }

    /// <summary>Refuses a house without spots or seats.</summary>
    public static void NeedSpotsAndSeats(LoadedHouse loaded)
    {
        House house = loaded.House;
        if (house.Spots.Count == 0 || house.Seats.Count == 0)
        {
            throw NamedThing.NoneOf(house.Spots.Count == 0 ? "spot" : "seat");
        }
    }

    private static LoadedHouse Fit(LoadedHouse loaded, FittedLosses? fitted) => fitted is null
        ? loaded
        : loaded with { House = fitted.ApplyTo(loaded.House), AsWritten = fitted.ApplyTo(loaded.AsWritten), Fitted = fitted };
}

/// <summary>The tables a command uses: those of <c>--materials</c>, or the built-in ones.</summary>
internal static class LoadedTables
{
    /// <summary>Reads them; problems are reported, an error ends the command.</summary>
    public static MaterialTables Read(Invocation invocation, ParseResult parse, CommonOptions common)
    {
        string? folder = parse.GetValue(common.Materials);
        MaterialTablesResult result = folder is not null
            ? MaterialTablesFile.ReadFolder(invocation.Files.ToReadFolder(folder, MaterialTablesFile.FileNames))
            : OpenedBundle.Of(invocation, parse) is { } opened
                ? MaterialTablesFile.ReadTexts(opened.Typed, opened.Bundle.Tables)
                : MaterialTablesFile.ReadBuiltIn();
        ProblemLines.Write(result.Problems, invocation.Error, invocation.Width);
        return result.Tables
            ?? throw new CannotBeDoneException($"the tables of {folder ?? "the program"} cannot be used; see the messages above");
    }
}
