using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Cli.Output;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;

namespace LinkMargin.Cli.Commands;

/// <summary>A house that can be computed, with the tables it was read with.</summary>
/// <param name="House">The house.</param>
/// <param name="Unit">The unit of its file's bare lengths.</param>
/// <param name="Tables">The tables it was read with.</param>
internal sealed record LoadedHouse(House House, LengthUnit Unit, MaterialTables Tables)
{
    /// <summary>The house as its file has it, before any <c>--what-if</c>.</summary>
    public House AsWritten { get; private init; } = House;

    /// <summary>What is different from the file, in the words of <c>--what-if</c>; empty where nothing is.</summary>
    public IReadOnlyList<string> WhatIf { get; private init; } = [];

    /// <summary>Losses fitted to readings, which the house has in place of the tables'; null where it has not.</summary>
    public FittedLosses? Fitted { get; private init; }

    /// <summary>How far figures may be out, apart from each material and radio.</summary>
    public Spreads Spreads => Tables.Spreads
        ?? throw new CannotBeDoneException("the tables say nothing of how far figures may be out; add spreads.yaml to the folder of --materials");

    /// <summary>How far its figures may be out.</summary>
    public UncertaintyBasis Uncertainty => new(Spreads, Fitted);

    /// <summary>How many readings its losses were fitted to, for JSON.</summary>
    public int? FittedToMeasurements => Fitted?.MeasurementCount;

    /// <summary>The same for JSON, which leaves out what there is none of.</summary>
    public IReadOnlyList<string>? WhatIfOrNone => WhatIf.Count > 0 ? WhatIf : null;

    /// <summary>The same for the caption of a picture.</summary>
    public string WhatIfCaption => (WhatIf.Count > 0 ? $"what if: {string.Join(", ", WhatIf)}; " : "")
        + (Fitted is null ? "" : FormattableString.Invariant($"losses fitted to {Fitted.MeasurementCount} readings; "));

    /// <summary>How its file writes lengths.</summary>
    public LengthFormat Lengths { get; } = new(Unit);

    /// <summary>The same for pictures.</summary>
    public LengthUnit PlotUnit => Lengths.InFeet ? LengthUnit.Foot : LengthUnit.Metre;

    /// <summary>Reads a house file; what is wrong or odd in it goes to the talk, and a mistake ends the command.</summary>
    /// <param name="invocation">Where the talk goes.</param>
    /// <param name="tables">The tables it may name.</param>
    /// <param name="typed">The file as it was typed.</param>
    /// <param name="whatIf">Edits of the house for this run; null where there are none.</param>
    /// <param name="fitted">A file of fitted losses; null where the tables' are used.</param>
    public static LoadedHouse Read(
        Invocation invocation, MaterialTables tables, string typed, string[]? whatIf = null, string? fitted = null)
    {
        HouseParseResult parsed = ReadFile(invocation, tables, typed);
        ProblemLines.Write(parsed.Problems, invocation.Error, invocation.Width);
        return parsed.House is null
            ? throw new CannotBeDoneException(ProblemLines.MendFirst(typed, parsed.Problems))
            : Of(parsed, tables).With(whatIf, invocation).With(FittedOption.Read(invocation, fitted, parsed.House));
    }

    /// <summary>The same house with losses fitted to readings.</summary>
    private LoadedHouse With(FittedLosses? fitted) => fitted is null
        ? this
        : this with { House = fitted.ApplyTo(House), AsWritten = fitted.ApplyTo(AsWritten), Fitted = fitted };

    /// <summary>The same house with edits, one after the other; what looks odd about them goes to the talk.</summary>
    public LoadedHouse With(string[]? whatIf, Invocation invocation)
    {
        House edited = House;
        List<string> words = [];
        List<string> faults = [];
        foreach (string typed in whatIf ?? [])
        {
            try
            {
                WrittenEdit written = new EditText(edited, Tables, Unit).Read(typed);
                edited = written.Edit.ApplyTo(edited);
                words.Add(written.Text);
                if (written.Warning is { } odd)
                {
                    WordWrap.WriteMessage($"{WhatIfOption.Name} {Quote.Of(written.Text)}: {odd}", invocation.Error, invocation.Width);
                }
            }
            catch (EditFaultException fault)
            {
                faults.Add($"{WhatIfOption.Name} {Quote.Of(typed)} {fault.Message}");
            }
        }

        return faults.Count > 0
            ? throw new CannotBeDoneException(faults)
            : this with { House = edited, WhatIf = words };
    }

    /// <summary>Reads a house file, whatever comes of it.</summary>
    public static HouseParseResult ReadFile(Invocation invocation, MaterialTables tables, string typed) =>
        HouseFile.Read(invocation.Files.ToRead(typed), tables);

    /// <summary>A reading that gave a house.</summary>
    public static LoadedHouse Of(HouseParseResult parsed, MaterialTables tables) => new(
        parsed.House ?? throw new ArgumentException("This reading gave no house.", nameof(parsed)), parsed.Unit, tables);

    /// <summary>Says on lines of their own what is different from the file and the tables.</summary>
    public void WriteWhatIf(TextWriter output, int width)
    {
        if (WhatIf.Count > 0)
        {
            WordWrap.Write($"What if: {string.Join("; ", WhatIf)}.", output, width);
        }

        if (Fitted is not null)
        {
            WordWrap.Write(FormattableString.Invariant($"Losses fitted to {Fitted.MeasurementCount} readings in the house '{Fitted.HouseName}'."), output, width);
        }

        if (WhatIf.Count > 0 || Fitted is not null)
        {
            output.WriteLine();
        }
    }

    /// <summary>Refuses a house that has nothing to compare.</summary>
    public void NeedSpotsAndSeats()
    {
        if (House.Spots.Count == 0 || House.Seats.Count == 0)
        {
            throw NamedThing.NoneOf(House.Spots.Count == 0 ? "spot" : "seat");
        }
    }
}
