using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Houses;

/// <summary>A house that is ready to compute, with the tables it was read with.</summary>
/// <param name="House">The house, with every change of this run.</param>
/// <param name="Unit">The unit of its file's bare lengths.</param>
/// <param name="Tables">The tables it was read with.</param>
internal sealed record LoadedHouse(House House, LengthUnit Unit, MaterialTables Tables)
{
    /// <summary>The house as in its file, before any <c>--what-if</c>.</summary>
    public House AsWritten { get; init; } = House;

    /// <summary>What differs from the file, in words; empty if nothing does.</summary>
    public IReadOnlyList<string> WhatIf { get; init; } = [];

    /// <summary>The same as a person wrote it after <c>--what-if</c>.</summary>
    public IReadOnlyList<string> WrittenEdits { get; init; } = [];

    /// <summary>Losses fitted to measurements, which replace the table losses; null if there are none.</summary>
    public FittedLosses? Fitted { get; init; }

    /// <summary>The spreads of its tables.</summary>
    public Spreads Spreads => Tables.Spreads
        ?? throw new CannotBeDoneException("these tables state no spreads, so no uncertainty can be computed; add spreads.yaml to the folder of --materials");

    /// <summary>The uncertainty of its inputs.</summary>
    public UncertaintyBasis Uncertainty => new(Spreads, Fitted);

    /// <summary>How many measurements its losses were fitted to, for JSON.</summary>
    public int? FittedToMeasurements => Fitted?.MeasurementCount;

    /// <summary>The changes for JSON, as written; null instead of an empty list, so that it is omitted.</summary>
    public IReadOnlyList<string>? WhatIfOrNone => WrittenEdits.Count > 0 ? WrittenEdits : null;

    /// <summary>All that differs from the file, to follow <c>what if</c>.</summary>
    public string WhatIfWords => string.Join(" and ", WhatIf);

    /// <summary>The same for the caption of a picture, with the fit.</summary>
    public string WhatIfCaption => (WhatIf.Count > 0 ? $"what if {WhatIfWords}; " : "")
        + (Fitted is null ? "" : FormattableString.Invariant($"losses fitted to {Fitted.MeasurementCount} measurements; "));

    /// <summary>How its file writes lengths.</summary>
    public LengthFormat Lengths { get; } = new(Unit);

    /// <summary>The unit of its pictures: metres or feet.</summary>
    public LengthUnit PlotUnit => Lengths.InFeet ? LengthUnit.Foot : LengthUnit.Metre;

    /// <summary>Writes what differs from the file and the tables, on separate lines.</summary>
    public void WriteWhatIf(TextWriter output, int width)
    {
        if (WhatIf.Count > 0)
        {
            WordWrap.Write($"What if {WhatIfWords}.", output, width);
        }

        if (Fitted is not null)
        {
            WordWrap.Write(FormattableString.Invariant($"Losses fitted to {Fitted.MeasurementCount} measurements in the house '{Fitted.HouseName}'."), output, width);
        }

        if (WhatIf.Count > 0 || Fitted is not null)
        {
            output.WriteLine();
        }
    }
}
