using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Cli.Tests;

/// <summary>A small house file: two levels, two spots, three seats, one of which no spot can serve.</summary>
internal static class SampleFile
{
    public const string Text =
        """
        house: Test Cottage
        units: m
        levels:
          - name: den
            height: 2.4
            outer: brick-215
            inner: drywall-stud
            rooms:
              - {name: games den, corner: [0, 0], size: [4, 5]}
              - {name: passage, corner: [4, 0], size: [4, 5]}
            above: {build-up: timber-joist-225, joists: {run: x}}
          - name: loft
            height: 2.3
            outer: brick-215
            inner: drywall-stud
            rooms:
              - {name: studio, corner: [0, 0], size: [8, 5]}
        radios: {console: console-typical, controller: controller-typical}
        spots:
          - {name: den rack, level: den, at: [0.5, 0.5, 1.1]}
          - {name: loft shelf, level: loft, at: [7, 4, 1.5]}
        seats:
          - {name: sofa, level: den, at: [3, 2], hands: 0.7, required: 15 dB}
          - {name: bench, level: den, at: [7, 4], hands: 0.7, required: 60 dB}
          - {name: desk, level: loft, at: [1.5, 1], hands: 0.75, facing: north, required: 20 dB}

        """;

    /// <summary>The same without the seat that asks too much.</summary>
    public static string Modest { get; } = Text.Replace("required: 60 dB", "required: 15 dB", StringComparison.Ordinal);

    /// <summary>The same with one spot and one seat.</summary>
    public static string OneLink { get; } = string.Join('\n', Text.Split('\n').Where(line =>
        !line.Contains("loft shelf", StringComparison.Ordinal) && !line.Contains("bench", StringComparison.Ordinal) && !line.Contains("desk", StringComparison.Ordinal)));

    /// <summary>The house a text describes.</summary>
    public static House HouseOf(string text) => HouseFile.Parse(text, "sample", MaterialTablesFile.ReadBuiltIn().Tables!).House!;
}
