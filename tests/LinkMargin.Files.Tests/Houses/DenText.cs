using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>The text of a den below a loft, with a rack and a seat, to be continued with what a test is about.</summary>
internal static class DenText
{
    internal const string House =
        """
        house: h
        units: m
        levels:
          - name: den
            height: 2.4
            outer: brick-215
            inner: drywall-stud
            rooms: [{name: room, corner: [0, 0], size: [4, 5]}]
            above: {build-up: timber-joist-225, joists: {run: x}}
          - name: loft
            height: 2.3
            outer: brick-215
            inner: drywall-stud
            rooms: [{name: studio, corner: [0, 0], size: [8, 5]}]
        fixtures:
          - {name: rack, level: den, box: [0.2, 0.2, 0.8, 0.8], to: 2, material: sheet-steel, shell: true}
          - {name: panel, level: den, box: [1, 4.8, 3, 4.9], from: 0.8, to: 2, material: flat-screen}
          - {name: block, level: den, box: [2.5, 1, 3.5, 2], to: 2, material: brick-215}
        seats: [{name: sofa, level: den, at: [2, 3], facing: panel}]

        """;

    internal static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;
}
