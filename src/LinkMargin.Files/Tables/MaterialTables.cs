using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Tables;

/// <summary>
/// The names that a house file may use for materials, floor build-ups and radios. Each table keeps the row order of its
/// file.
/// </summary>
/// <param name="Materials">Materials by name.</param>
/// <param name="BuildUps">Floor build-ups by name.</param>
/// <param name="Radios">Radios by name.</param>
public sealed record MaterialTables(
    IReadOnlyDictionary<string, Material> Materials,
    IReadOnlyDictionary<string, FloorBuildUp> BuildUps,
    IReadOnlyDictionary<string, Radio> Radios)
{
    /// <summary>The kind of a material that has none in its table.</summary>
    public const string OtherMaterials = "materials";

    /// <summary>The kind of all floor build-ups.</summary>
    public const string Floors = "floors";

    /// <summary>The kind of all radios.</summary>
    public const string AllRadios = "radios";

    /// <summary>Synonyms by row name; rows without any are omitted.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Also { get; init; } = new Dictionary<string, IReadOnlyList<string>>();

    /// <summary>The kinds of materials by name; materials without one are omitted.</summary>
    public IReadOnlyDictionary<string, string> Kinds { get; init; } = new Dictionary<string, string>();

    /// <summary>Synonyms of a row.</summary>
    public IReadOnlyList<string> AlsoOf(string name) => Also.GetValueOrDefault(name, []);

    /// <summary>The kind of a row.</summary>
    public string KindOf(string name) => Materials.ContainsKey(name) ? Kinds.GetValueOrDefault(name, OtherMaterials)
        : BuildUps.ContainsKey(name) ? Floors
        : AllRadios;

    /// <summary>Only the rows with these names; meanings of margins and spreads are omitted.</summary>
    public MaterialTables Only(IReadOnlyCollection<string> names)
    {
        return new(Those(Materials), Those(BuildUps), Those(Radios)) { Files = Files, Also = Also, Kinds = Kinds };

        OrderedDictionary<string, T> Those<T>(IReadOnlyDictionary<string, T> rows) => new(rows.Where(row => names.Contains(row.Key)));
    }

    /// <summary>Meanings of margins, smallest first.</summary>
    public IReadOnlyList<MarginMeaning> Margins { get; init; } = [];

    /// <summary>Meanings of probabilities of passing, lowest first; empty if no table gives them.</summary>
    public IReadOnlyList<PassingBand> Bands { get; init; } = [];

    /// <summary>The rows of the table of spreads; empty if no such table was read.</summary>
    public IReadOnlyList<SpreadRow> SpreadRows { get; init; } = [];

    /// <summary>The spreads; null if no such table was read.</summary>
    public Spreads? Spreads => SpreadRows.Count == 0 ? null : SpreadTableReader.Of(SpreadRows);

    /// <summary>The kinds of cable, most preferred first. The built-in table is only read when needed.</summary>
    public IReadOnlyList<CableKind> Cables => cables.Value;

    /// <summary>Sets the kinds of cable.</summary>
    internal Lazy<IReadOnlyList<CableKind>> CableSource { init => cables = value; }

    private readonly Lazy<IReadOnlyList<CableKind>> cables = new(IReadOnlyList<CableKind> () => []);

    /// <summary>Where the tables come from; null if they were not read from files.</summary>
    public TableFiles? Files { get; init; }

    /// <summary>The meaning of a probability of passing.</summary>
    /// <param name="probability">The probability, 0 to 1.</param>
    public PassingBand BandOf(double probability) =>
        (Bands.Count > 0 ? Bands : MaterialTablesFile.BuiltInBands).Last(band => band.LeastProbability <= probability);

    /// <summary>The meaning of a margin: the row with the largest margin not above it; null below the smallest.</summary>
    public MarginMeaning? MeaningOf(double marginDb) => Margins.LastOrDefault(row => row.MarginDb <= marginDb);
}
