using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>A house file that is right, and ways to spoil one line of it.</summary>
internal static class HouseText
{
    public const string Good = """
        house: Test Row
        units: m
        levels:
          - name: low
            height: 2.4
            outer: brick
            inner: board
            rooms:
              - {name: den, corner: [0, 0], size: [4, 5]}
              - {name: hall, outline: [[4, 0], [6, 0], [6, 5], [4, 5]]}
            doors:
              - {name: den door, between: [den, hall], material: leaf, open: true}
            windows:
              - {room: den, side: south, at: 1, width: 1.5, sill: 1, height: 1.1, material: leaf}
            gaps:
              - {room: hall, side: east, width: 0.9, height: 2.1}
            walls:
              - {name: stub, along: [[2, 3], [2, 4]], material: brick, height: 1.1}
            above:
              build-up: joisted
              joists: {run: x, spacing: 0.4, first: 0.2}
              voids: [[[4.5, 1], [5.5, 1], [5.5, 3], [4.5, 3]]]
          - name: high
            height: 2.3
            outer: brick
            inner: board
            rooms:
              - {name: loft, corner: [0, 0], size: [6, 5]}
        fixtures:
          - {name: rack, level: low, box: [0.2, 3.5, 0.8, 4.5], to: 1.9, material: steel, open: [front]}
          - {name: screen, level: low, box: [1, 4.8, 2.5, 4.9], from: 0.7, to: 1.5, material: steel}
        radios:
          console: console-typical
          controller: {name: mine, transmit: 4 dBm, gain: -2 dBi, sensitivity: -88 dBm, hand: 6 dB}
        required: 12 dB
        spots:
          - {name: in rack, inside: rack, height: 1.1}
          - {name: shelf, level: high, at: [3, 2, 1.6]}
        seats:
          - {name: sofa, level: low, at: [1.75, 1.85], facing: screen, required: 20 dB}
          - {name: bed, level: high, at: [1, 1], hands: 0.9, facing: north-west}
        zones:
          - {name: loft shelves, level: high, room: loft, heights: [0.5, 1.2]}
          - {name: top of the screen, level: low, corner: [1, 4.8], size: [1.5, 0.1], heights: [1.5]}
        keep-out:
          - {name: way through, level: low, room: hall}
          - {name: low corner, level: high, outline: [[0, 0], [1, 0], [0, 1]], from: 0.2, to: 1}
        """;

    public static HouseParseResult Read(string text) => HouseFile.Parse(text, "house.yaml", SmallTables.Tables);

    public static House GoodHouse(params (string From, string To)[] changes)
    {
        HouseParseResult parsed = Read(Changed(changes));
        Assert.Empty(parsed.Problems);
        return parsed.House!;
    }

    /// <summary>The problems after some changes, each as it is printed.</summary>
    public static IReadOnlyList<string> Faults(params (string From, string To)[] changes) =>
        [.. Read(Changed(changes)).Problems.Select(p => p.ToString())];

    /// <summary>The one problem after a change; a mistake leaves no house.</summary>
    public static string Error(params (string From, string To)[] changes) => Only(Severity.Error, changes);

    /// <summary>The one odd thing after a change; the house is there all the same.</summary>
    public static string Warning(params (string From, string To)[] changes) => Only(Severity.Warning, changes);

    private static string Only(Severity severity, (string From, string To)[] changes)
    {
        HouseParseResult parsed = Read(Changed(changes));
        Assert.Equal(severity == Severity.Error, parsed.House is null);
        Problem problem = Assert.Single(parsed.Problems);
        Assert.Equal(severity, problem.Severity);
        return problem.ToString();
    }

    private static string Changed((string From, string To)[] changes)
    {
        string text = Good;
        foreach ((string from, string to) in changes)
        {
            Assert.Contains(from, text, StringComparison.Ordinal);
            text = text.Replace(from, to, StringComparison.Ordinal);
        }

        return text;
    }
}
