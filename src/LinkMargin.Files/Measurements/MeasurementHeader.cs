using System.Text.RegularExpressions;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Measurements;

/// <summary>Which column of the file is which, and the units in its headings.</summary>
internal sealed partial class MeasurementHeader
{
    private readonly Dictionary<MeasurementColumn, int> places = [];
    private readonly Dictionary<MeasurementColumn, LengthUnit> units = [];

    private MeasurementHeader(int columnCount) => ColumnCount = columnCount;

    /// <summary>The order of the template, assumed for a file without headings.</summary>
    public static IReadOnlyList<MeasurementColumn> TemplateOrder { get; } =
        [MeasurementColumn.Transmitter, MeasurementColumn.Receiver, MeasurementColumn.Received, MeasurementColumn.Device];

    /// <summary>How many columns the file has.</summary>
    public int ColumnCount { get; }

    /// <summary>Reads a line as headings; null if none of its fields is one.</summary>
    public static MeasurementHeader? TryRead(IReadOnlyList<CsvCell> line, Source source)
    {
        if (!line.Any(cell => Parse(cell.Text).Column is not null))
        {
            return null;
        }

        MeasurementHeader header = new(line.Count);
        for (int i = 0; i < line.Count; i++)
        {
            header.Take(line[i], i, source);
        }

        header.CheckComplete(line[0].Mark, source);
        return header;
    }

    /// <summary>The headings of a file that has none.</summary>
    public static MeasurementHeader OfTemplate()
    {
        MeasurementHeader header = new(TemplateOrder.Count);
        for (int i = 0; i < TemplateOrder.Count; i++)
        {
            header.places.Add(TemplateOrder[i], i);
        }

        return header;
    }

    /// <summary>Whether the file has a column.</summary>
    public bool Has(MeasurementColumn column) => places.ContainsKey(column);

    /// <summary>A line's field in a column; null if there is no such column, the line is too short or the field is empty.</summary>
    public CsvCell? Find(IReadOnlyList<CsvCell> line, MeasurementColumn column) =>
        places.TryGetValue(column, out int place) && place < line.Count && line[place].Text.Length > 0 ? line[place] : null;

    /// <summary>The unit of a column's bare lengths.</summary>
    public LengthUnit UnitOf(MeasurementColumn column, LengthUnit houseUnit) => units.GetValueOrDefault(column, houseUnit);

    private void Take(CsvCell cell, int place, Source source)
    {
        (MeasurementColumn? column, string unit) = Parse(cell.Text);
        if (column is null)
        {
            if (cell.Text.Length > 0)
            {
                string meant = NearestWord.Find(cell.Text, MeasurementColumn.All.Select(c => c.Heading)) is { } near ? $"; did you mean '{near}'?" : "";
                source.Warning(cell.Mark, $"{Quote.Of(cell.Text)} is not a known column, so it is ignored{meant}");
            }

            return;
        }

        if (!places.TryAdd(column, place))
        {
            source.Error(cell.Mark, $"the heading '{column.Heading}' appears twice; remove one of the two columns");
        }
        else if (unit.Length > 0 && !column.TakesUnit(unit))
        {
            source.Error(cell.Mark, $"{column.Heading}: {Quote.Of(unit)} is not a unit of this column; {(column.IsLength ? "write m, cm, mm, ft or in" : "only dBm is read")}");
        }
        else if (unit.Length > 0 && column.IsLength)
        {
            units.Add(column, LengthUnits.FromWord(unit)!.Value);
        }
    }

    private void CheckComplete(Mark mark, Source source)
    {
        if (!Has(MeasurementColumn.Received))
        {
            source.Error(mark, "the column 'received' is missing, so there are no levels; name the column that holds them 'received'");
        }

        CheckPlaced(MeasurementColumn.Transmitter, MeasurementColumn.TransmitterPlace, mark, source);
        CheckPlaced(MeasurementColumn.Receiver, MeasurementColumn.ReceiverPlace, mark, source);
        if (!Has(MeasurementColumn.Device))
        {
            source.Warning(mark, "there is no column 'device', so all levels are assumed to come from the same device");
        }
    }

    private void CheckPlaced(MeasurementColumn name, MeasurementPlaceColumns place, Mark mark, Source source)
    {
        if (!Has(name) && !(Has(place.X) && Has(place.Y)))
        {
            source.Error(mark, $"nothing says where the {name.Heading} was; add the column '{name.Heading}' for the name of a spot or seat, or '{place.X.Heading}', '{place.Y.Heading}', '{place.Height.Heading}' and '{place.Level.Heading}'");
        }
    }

    /// <summary>Case, spaces, hyphens and underscores do not matter; a unit may follow, with or without brackets.</summary>
    private static (MeasurementColumn? Column, string Unit) Parse(string heading)
    {
        string plain = Blanks().Replace(heading.Trim(), " ");
        MeasurementColumn? column = MeasurementColumn.All
            .Where(c => plain.StartsWith(c.Heading, StringComparison.OrdinalIgnoreCase))
            .MaxBy(c => c.Heading.Length);
        string rest = column is null ? "" : plain[column.Heading.Length..].Trim();
        if (column is null || rest.Length == 0)
        {
            return (column, "");
        }

        // Text in brackets is taken for a unit even if it is not a valid one.
        bool isInBrackets = (rest[0], rest[^1]) is ('(', ')') or ('[', ']');
        string unit = isInBrackets ? rest[1..^1].Trim() : rest;
        return isInBrackets || column.TakesUnit(unit) ? (column, unit) : (null, "");
    }

    [GeneratedRegex(@"[\s_-]+", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();
}

/// <summary>One column of a measurements file.</summary>
/// <param name="Heading">Its heading in the template and in messages.</param>
/// <param name="Means">What it contains.</param>
internal sealed record MeasurementColumn(string Heading, string Means)
{
    /// <summary>Where the transmitter was, by name.</summary>
    public static MeasurementColumn Transmitter { get; } = new("transmitter", "the spot or seat the transmitter was at");

    /// <summary>Where the receiver was, by name.</summary>
    public static MeasurementColumn Receiver { get; } = new("receiver", "the seat or spot the receiver was at");

    /// <summary>What was received.</summary>
    public static MeasurementColumn Received { get; } = new("received", "the level shown, in dBm, or 'not heard'");

    /// <summary>The receiving device.</summary>
    public static MeasurementColumn Device { get; } = new("device", "what the level was read with");

    /// <summary>The transmitting device.</summary>
    public static MeasurementColumn Sender { get; } = new("sender", "what was sending, where there was more than one");

    /// <summary>The level below which nothing is heard.</summary>
    public static MeasurementColumn NotHeardBelow { get; } = new("not heard below", "the level below which the device hears nothing, in dBm");

    /// <summary>Where the transmitter was, by coordinates.</summary>
    public static MeasurementPlaceColumns TransmitterPlace { get; } = MeasurementPlaceColumns.Of(Transmitter);

    /// <summary>Where the receiver was, by coordinates.</summary>
    public static MeasurementPlaceColumns ReceiverPlace { get; } = MeasurementPlaceColumns.Of(Receiver);

    /// <summary>Every known column.</summary>
    public static IReadOnlyList<MeasurementColumn> All { get; } =
    [
        Transmitter, Receiver, Received, Device, Sender, NotHeardBelow, .. TransmitterPlace.All, .. ReceiverPlace.All,
    ];

    /// <summary>Whether it contains a length, and so may have a unit in its heading.</summary>
    public bool IsLength { get; init; }

    /// <summary>Whether a word is an allowed unit in its heading.</summary>
    public bool TakesUnit(string word) => IsLength
        ? LengthUnits.FromWord(word) is not null
        : (this == Received || this == NotHeardBelow) && word.Equals("dBm", StringComparison.OrdinalIgnoreCase);
}

/// <summary>The columns that place one end of a measurement by coordinates.</summary>
/// <param name="Level">The level's name.</param>
/// <param name="X">East on the plan.</param>
/// <param name="Y">North on the plan.</param>
/// <param name="Height">Height above the level's floor.</param>
internal sealed record MeasurementPlaceColumns(MeasurementColumn Level, MeasurementColumn X, MeasurementColumn Y, MeasurementColumn Height)
{
    /// <summary>All four.</summary>
    public IReadOnlyList<MeasurementColumn> All => [Level, X, Y, Height];

    /// <summary>Those of one end.</summary>
    public static MeasurementPlaceColumns Of(MeasurementColumn end) => new(
        new MeasurementColumn($"{end.Heading} level", "the name of the level it was on"),
        new MeasurementColumn($"{end.Heading} x", "where on the plan, east") { IsLength = true },
        new MeasurementColumn($"{end.Heading} y", "where on the plan, north") { IsLength = true },
        new MeasurementColumn($"{end.Heading} height", "how high over the floor") { IsLength = true });
}
