using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Tables;

/// <summary>
/// The words a house file may use for what things are made of and for radios. Each table gives its rows in the order of
/// its file.
/// </summary>
/// <param name="Materials">Materials by name.</param>
/// <param name="BuildUps">Floor build-ups by name.</param>
/// <param name="Radios">Radios by name.</param>
public sealed record MaterialTables(
    IReadOnlyDictionary<string, Material> Materials,
    IReadOnlyDictionary<string, FloorBuildUp> BuildUps,
    IReadOnlyDictionary<string, Radio> Radios)
{
    /// <summary>The kind of materials whose table gives them none.</summary>
    public const string OtherMaterials = "materials";

    /// <summary>The kind of all floor build-ups.</summary>
    public const string Floors = "floors";

    /// <summary>The kind of all radios.</summary>
    public const string AllRadios = "radios";

    /// <summary>Other words for rows, by their names; rows without any are omitted.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Also { get; init; } = new Dictionary<string, IReadOnlyList<string>>();

    /// <summary>The kinds of materials, by their names; those without one are omitted.</summary>
    public IReadOnlyDictionary<string, string> Kinds { get; init; } = new Dictionary<string, string>();

    /// <summary>Other words for a row.</summary>
    public IReadOnlyList<string> AlsoOf(string name) => Also.GetValueOrDefault(name, []);

    /// <summary>The kind a row stands with.</summary>
    public string KindOf(string name) => Materials.ContainsKey(name) ? Kinds.GetValueOrDefault(name, OtherMaterials)
        : BuildUps.ContainsKey(name) ? Floors
        : AllRadios;

    /// <summary>The rows of these names alone; what margins mean and spreads are omitted.</summary>
    public MaterialTables Only(IReadOnlyCollection<string> names)
    {
        return new(Those(Materials), Those(BuildUps), Those(Radios)) { Files = Files, Also = Also, Kinds = Kinds };

        OrderedDictionary<string, T> Those<T>(IReadOnlyDictionary<string, T> rows) => new(rows.Where(row => names.Contains(row.Key)));
    }

    /// <summary>What margins mean, smallest first.</summary>
    public IReadOnlyList<MarginMeaning> Margins { get; init; } = [];

    /// <summary>What probabilities that a seat passes mean, the lowest first; empty where no table says so.</summary>
    public IReadOnlyList<PassingBand> Bands { get; init; } = [];

    /// <summary>How far figures may be out, row by row; empty where no such table was read.</summary>
    public IReadOnlyList<SpreadRow> SpreadRows { get; init; } = [];

    /// <summary>How far figures may be out; null where no such table was read.</summary>
    public Spreads? Spreads => SpreadRows.Count == 0 ? null : SpreadTableReader.Of(SpreadRows);

    /// <summary>The kinds of cable, the preferred one first. The built-in table is read when somebody asks for it.</summary>
    public IReadOnlyList<CableKind> Cables => cables.Value;

    /// <summary>Sets the kinds of cable.</summary>
    internal Lazy<IReadOnlyList<CableKind>> CableSource { init => cables = value; }

    private readonly Lazy<IReadOnlyList<CableKind>> cables = new(IReadOnlyList<CableKind> () => []);

    /// <summary>Where the tables are from; null where they were not read from files.</summary>
    public TableFiles? Files { get; init; }

    /// <summary>What a probability that a seat passes means.</summary>
    /// <param name="probability">The probability, 0 to 1.</param>
    public PassingBand BandOf(double probability) =>
        (Bands.Count > 0 ? Bands : MaterialTablesFile.BuiltInBands).Last(band => band.LeastProbability <= probability);

    /// <summary>What a margin means: the row with the largest margin that is not above it; null below the smallest.</summary>
    public MarginMeaning? MeaningOf(double marginDb) => Margins.LastOrDefault(row => row.MarginDb <= marginDb);
}
