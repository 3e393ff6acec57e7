using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the tables of materials, floor build-ups, radios, margins, spreads and cables.</summary>
public static class MaterialTablesFile
{
    private const string MaterialsFile = "materials.yaml";
    private const string FloorsFile = "floors.yaml";
    private const string RadiosFile = "radios.yaml";
    private const string MarginsFile = "margins.yaml";
    private const string SpreadsFile = "spreads.yaml";
    private const string CablesFile = "cables.yaml";

    /// <summary>The names of the files in a folder of tables.</summary>
    public static IReadOnlyList<string> FileNames { get; } = [MaterialsFile, FloorsFile, RadiosFile, MarginsFile, SpreadsFile, CablesFile];

    // They never change, so a process reads them once.
    private static readonly Lazy<MaterialTablesResult> LazyBuiltIn = new(() => Read((name, problems) => BuiltIn(name, problems)));

    /// <summary>The built-in bands, for a table of margins that has none.</summary>
    public static IReadOnlyList<PassingBand> BuiltInBands => ReadBuiltIn().Tables!.Bands;

    /// <summary>Reads the built-in tables.</summary>
    public static MaterialTablesResult ReadBuiltIn() => LazyBuiltIn.Value;

    /// <summary>
    /// Reads the tables of a folder. For a missing file the built-in one is used, and a note says so; built-in floor build-ups whose
    /// materials the folder does not have are then omitted, and a note says which.
    /// </summary>
    /// <param name="folder">The folder as the person named it.</param>
    public static MaterialTablesResult ReadFolder(string folder)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        if (!Directory.Exists(folder))
        {
            return Refused(folder, File.Exists(folder)
                ? "this is a file; name the folder that holds it"
                : "there is no such folder; check the name");
        }

        return FileNames.Any(name => Path.Exists(Path.Combine(folder, name)))
            ? Read((name, problems) => InFolder(folder, name, problems))
            : Refused(folder, $"this folder holds none of {string.Join(", ", FileNames)}; name the folder that holds the tables");
    }

    /// <summary>Reads the tables of an archive; for a missing file the built-in one is used.</summary>
    /// <param name="archive">The archive, as the person named it.</param>
    /// <param name="texts">The files by name.</param>
    public static MaterialTablesResult ReadTexts(string archive, IReadOnlyDictionary<string, string> texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        return Read((name, problems) => texts.TryGetValue(name, out string? text)
            ? new TableText(SourceOf($"{archive}: {name}", name, problems), text, false)
            : BuiltIn(name, problems));
    }

    /// <summary>The texts of the tables in a folder, with built-in ones for missing files; all built-in for a null folder.</summary>
    public static IReadOnlyDictionary<string, string> Texts(string? folder) => FileNames.ToDictionary(
        name => name,
        name => folder is not null && File.Exists(Path.Combine(folder, name)) ? File.ReadAllText(Path.Combine(folder, name)) : BuiltInText(name));

    /// <summary>The text of a built-in file, as a starting point for a copy.</summary>
    /// <param name="name">One of <see cref="FileNames"/>.</param>
    public static string BuiltInText(string name)
    {
        using Stream stream = typeof(MaterialTablesFile).Assembly.GetManifestResourceStream($"materials/{name}")
            ?? throw new ArgumentException($"There is no built-in table file '{name}'.", nameof(name));
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Reads the built-in tables with one of them replaced.</summary>
    /// <param name="name">One of <see cref="FileNames"/>.</param>
    /// <param name="text">The text that replaces it.</param>
    internal static MaterialTablesResult Parse(string name, string text) => Read((file, problems) =>
        file == name ? new TableText(SourceOf(file, file, problems), text, false) : BuiltIn(file, problems));

    private static MaterialTablesResult Refused(string folder, string message) =>
        new(null, [new Problem(folder, new Mark(1, 1), Severity.Error, message)]);

    private static MaterialTablesResult Read(Func<string, List<Problem>, TableText> open)
    {
        List<Problem> materialProblems = [], floorProblems = [], radioProblems = [], marginProblems = [], spreadProblems = [], cableProblems = [];
        TableText materialText = open(MaterialsFile, materialProblems);
        TableText floorText = open(FloorsFile, floorProblems);
        TableText radioText = open(RadiosFile, radioProblems);
        TableText marginText = open(MarginsFile, marginProblems);
        TableText spreadText = open(SpreadsFile, spreadProblems);
        TableText cableText = open(CablesFile, cableProblems);

        // Half of the text is the table of materials: the others are parsed beside it.
        Task<MappingReader?> floorOpening = Task.Run(() => floorText.Open("the floor table", "floors"));
        Task<MappingReader?> radioOpening = Task.Run(() => radioText.Open("the radio table", "radios"));
        Task<MappingReader?> marginOpening = Task.Run(() => marginText.Open("the margin table", "margins", MarginTableReader.BandsKey));
        Task<MappingReader?> spreadOpening = Task.Run(() => spreadText.Open("the spread table", "spreads"));

        RowNames names = new(MaterialBuilder.Air);
        SearchWords words = new();
        MappingReader? materialTable = materialText.Open("the material table", "materials");
        OrderedDictionary<string, Material> materials = materialTable is null
            ? []
            : MaterialBuilder.Build(materialText.Source, MaterialRowReader.Read(materialTable, names, words), names.Met);
        OrderedDictionary<string, FloorBuildUp> floors = floorOpening.GetAwaiter().GetResult() is { } floorTable
            ? new FloorTableReader(materials, materialTable is null ? null : names.Met).Read(floorTable, words)
            : [];
        if (floorText.IsBuiltIn && !materialText.IsBuiltIn)
        {
            SayNotDrawn(floorText.Source, floorProblems, floors);
        }

        OrderedDictionary<string, Radio> radios =
            radioOpening.GetAwaiter().GetResult() is { } radioTable ? RadioTableReader.Read(radioTable, words) : [];
        MappingReader? marginTable = marginOpening.GetAwaiter().GetResult();
        IReadOnlyList<MarginMeaning> margins = marginTable is null ? [] : MarginTableReader.Read(marginTable);
        IReadOnlyList<PassingBand>? bands = marginTable is null ? null : MarginTableReader.ReadBands(marginTable);
        IReadOnlyList<SpreadRow> spreads =
            spreadOpening.GetAwaiter().GetResult() is { } spreadTable ? SpreadTableReader.Read(spreadTable) : [];

        // Few houses describe cables, so the built-in table is read only for those.
        Lazy<IReadOnlyList<CableKind>> cables = new(() => cableText.Open("the cable table", "cables") is { } cableTable ? CableTableReader.Read(cableTable) : []);
        if (!cableText.IsBuiltIn)
        {
            _ = cables.Value;
        }

        List<Problem>[] inOrder = [materialProblems, floorProblems, radioProblems, marginProblems, spreadProblems, cableProblems];
        Problem[] problems = [.. inOrder.SelectMany(list => list.OrderBy(p => p.Mark.Line).ThenBy(p => p.Mark.Column))];
        return new MaterialTablesResult(
            problems.Any(p => p.Severity == Severity.Error)
                ? null
                : new MaterialTables(materials, floors, radios)
                {
                    Margins = margins,
                    Bands = bands ?? [],
                    SpreadRows = spreads,
                    CableSource = cables,
                    Also = words.Also,
                    Kinds = words.Kinds,
                    Files = new TableFiles(
                        materialText.Source.File, floorText.Source.File, radioText.Source.File, marginText.Source.File, spreadText.Source.File, cableText.Source.File),
                },
            problems);
    }

    /// <summary>A built-in build-up that the user's own materials cannot make is not the user's error.</summary>
    private static void SayNotDrawn(Source source, List<Problem> problems, OrderedDictionary<string, FloorBuildUp> kept)
    {
        if (problems.RemoveAll(p => p.Severity == Severity.Error) > 0)
        {
            source.Warning(new Mark(1, 1), FormattableString.Invariant(
                $"only {kept.Count} of the built-in floor build-ups can be made of the given materials, so the others are omitted; put your own {FloorsFile} beside {MaterialsFile} if a house needs them"));
        }
    }

    private static TableText InFolder(string folder, string name, List<Problem> problems)
    {
        string path = Path.Combine(folder, name);
        if (!Path.Exists(path))
        {
            if (name != CablesFile) // most houses do not describe cables
            {
                problems.Add(new Problem(path, new Mark(1, 1), Severity.Warning, "this file does not exist, so the built-in one is used"));
            }

            return BuiltIn(name, problems);
        }

        Source source = SourceOf(path, name, problems);
        return new TableText(source, YamlText.Read(path, source), false);
    }

    private static TableText BuiltIn(string name, List<Problem> problems) =>
        new(SourceOf($"{name} (built in)", name, problems), BuiltInText(name), true);

    private static Source SourceOf(string file, string name, List<Problem> problems) => new(file, problems)
    {
        Example = $"{Path.GetFileNameWithoutExtension(name)}:",
        Start = $"remove it to use the built-in {name}",
    };
}

/// <summary>The result of reading the tables.</summary>
/// <param name="Tables">The tables; null if there are errors.</param>
/// <param name="Problems">Every error and note, by file and position.</param>
public sealed record MaterialTablesResult(MaterialTables? Tables, IReadOnlyList<Problem> Problems);

/// <summary>Which file each table was read from, as a person would name it.</summary>
/// <param name="Materials">The materials' file.</param>
/// <param name="BuildUps">The floor build-ups' file.</param>
/// <param name="Radios">The radios' file.</param>
/// <param name="Margins">The margins' file.</param>
/// <param name="Spreads">The spreads' file.</param>
/// <param name="Cables">The cables' file.</param>
public sealed record TableFiles(string Materials, string BuildUps, string Radios, string Margins, string Spreads, string Cables);

/// <summary>One table's file: its name in messages, its text, and whether it is built in.</summary>
/// <param name="Source">The file, with the problems found in it.</param>
/// <param name="Text">Its text; null, with an error recorded, if it could not be read.</param>
/// <param name="IsBuiltIn">Whether it comes with the program.</param>
internal sealed record TableText(Source Source, string? Text, bool IsBuiltIn)
{
    /// <summary>Opens the table; null, with errors recorded, if it is not valid.</summary>
    /// <param name="what">What it is, such as <c>the material table</c>.</param>
    /// <param name="keys">The keys it has.</param>
    public MappingReader? Open(string what, params string[] keys) =>
        Text is not null && YamlTree.ParseMapping(Text, Source) is { } root
            ? new MappingReader(Source, root, what, keys)
            : null;
}
