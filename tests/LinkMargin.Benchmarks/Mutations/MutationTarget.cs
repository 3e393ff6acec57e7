using System.Text;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Measurements;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Benchmarks.Mutations;

/// <summary>One kind of file with valid examples of it and its reader.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Valid">Valid files.</param>
/// <param name="Read">Reads the text of one made of the example of a number; how many problems it has.</param>
internal sealed record MutationTarget(string Name, IReadOnlyList<byte[]> Valid, Func<string, int, int> Read)
{
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;
    private static readonly House Demo = HouseFile.Parse(DemoHouse.Text, "house.yaml", Tables).House!;

    // Each key once.
    private const string SmallHouse = """
        house: Two rooms
        units: m
        required: 12 dB
        levels:
          - name: down
            height: 2.4
            outer: brick-102
            inner: drywall-stud
            rooms:
              - {name: lounge, corner: [0, 0], size: [4, 5]}
              - {name: kitchen, corner: [4.1, 0], size: [3, 5]}
              - {name: porch, outline: [[0, 5], [4, 5], [4, 6], [0, 6.2]]}
            walls:
              - {name: wing, along: [[1, 1], [2, 1], [2, 2]], material: drywall-stud, from: 0.1, height: 1.2}
            doors:
              - {between: [lounge, kitchen], material: door-hollow, open: true}
              - {room: porch, side: north, width: 0.9, material: door-composite}
            windows:
              - {room: lounge, side: west, at: 1, width: 2.0, sill: 0.5, height: 1.2, material: glass-double}
            gaps:
              - {between: [lounge, porch], width: 1}
            above: {build-up: timber-joist-200, joists: {run: x, spacing: 0.4, first: 0.1}, voids: [{corner: [0.5, 0.5], size: [1, 2]}]}
          - name: up
            elevation: 2.7
            height: 2.3
            outer: brick-102
            inner: drywall-stud
            rooms:
              - {name: bedroom, corner: [0, 0], size: [7.1, 5]}
        fixtures:
          - {name: rack, level: down, box: [3, 0.1, 3.6, 0.7], to: 1.8, material: sheet-steel, front: north, open: [front]}
          - {name: screen, level: up, box: [1, 0.1, 2.2, 0.15], from: 0.8, to: 1.6, turn: 5, material: flat-screen}
        radios: {console: console-typical, controller: {name: mine, transmit: 4 dBm, gain: -2 dBi, sensitivity: -88 dBm, hand: 6 dB, spread: 2 dB}}
        spots:
          - {name: in rack, inside: rack, height: 0.5}
          - {name: shelf, level: up, at: [6.5, 4.5, 1.4]}
        seats:
          - {name: sofa, level: down, at: [2, 4], facing: south, required: 20 dB, used: weekly, players: 2}
          - {name: bed, level: up, at: [3, 3], hands: 0.5, facing: screen, plays: shelf}
        zones:
          - {name: corner, level: up, room: bedroom, heights: [0.4, 1.2]}
        keep-out:
          - {name: stove, level: down, corner: [5, 1], size: [1, 1], from: 0, to: 2}
        """;

    private const string Placed = """
        transmitter x (m),transmitter y,transmitter height,transmitter level,receiver,received (dBm),device,sender,not heard below
        1.2,3.4,0.8,den,lounge sofa,-63.5,phone,beacon,-95
        2.2 m,3.4,80 cm,living,study desk,not heard,phone,beacon,-95
        1.2,3.4,0.8,den,beanbag,"< -92",tablet,,
        """;

    private const string Fitted = """
        fitted: Tern Terrace
        readings: 12
        materials:
          - {name: drywall-stud, table: 3.4 dB, shift: 1.25 dB, table-spread: 0.9 dB, spread: 0.5 dB}
          - {name: brick-215, table: 7.5 dB, shift: -2 dB, table-spread: 1.8 dB, spread: 1.1 dB}
        devices:
          - {name: "phone", offset: 4.5 dBm, spread: 1.2 dB, readings: 12}
        correlations:
          - {between: [drywall-stud, brick-215], value: -0.4}
        links:
          - {from: [1, 2, 0.5], to: [3.5, 4, 3.2], shift: 2.5 dB, spread: 3 dB}
        """;

    /// <summary>Every kind of file that a person writes.</summary>
    public static IReadOnlyList<MutationTarget> All { get; } =
    [
        new("house", Bytes(SmallHouse, SmallHouse, SmallHouse, StarterHouse.Text, DemoHouse.Text), (text, _) => HouseFile.Parse(text, "h.yaml", Tables).Problems.Count),
        new("readings", Bytes(DemoMeasurements.Text, Placed), (text, _) => MeasurementsFile.Parse(text, "r.csv", Demo, LengthUnit.Metre).Problems.Count),
        new(
            "tables",
            Bytes([.. MaterialTablesFile.FileNames.Select(MaterialTablesFile.BuiltInText)]),
            (text, i) => MaterialTablesFile.Parse(MaterialTablesFile.FileNames[i], text).Problems.Count),
        new("fitted", Bytes(Fitted), (text, _) => FittedFile.Parse(text, "f.yaml", Demo).Problems.Count),
    ];

    /// <summary>The file that a seed gives, and the example it was made of.</summary>
    public (byte[] Bytes, int Example) Spoilt(int seed)
    {
        int example = (int)((uint)seed % (uint)Valid.Count);
        return (new Mutator(seed).Spoil(Valid[example]), example);
    }

    /// <summary>Reads bytes as from a file; how many problems they have.</summary>
    public int ReadBytes(byte[] bytes, int example)
    {
        if (bytes.Length > YamlLimits.Bytes)
        {
            return 1; // refused before it is read
        }

        List<Problem> problems = [];
        return YamlText.Decode(bytes, new Source("bytes", problems)) is { } text ? Read(text, example) : problems.Count;
    }

    private static byte[][] Bytes(params string[] texts) => [.. texts.Select(Encoding.UTF8.GetBytes)];
}
