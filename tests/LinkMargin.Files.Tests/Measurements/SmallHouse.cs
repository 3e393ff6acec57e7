using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Measurements;
using LinkMargin.Files.Tests.Houses;

namespace LinkMargin.Files.Tests.Measurements;

/// <summary>A house of two levels with two spots and two seats, and files of readings taken in it.</summary>
internal static class SmallHouse
{
    public static House House { get; } = HouseFile.Parse(
        """
        house: Two rooms
        levels:
          - name: down
            height: 2.4
            outer: brick
            inner: board
            rooms:
              - {name: lounge, corner: [0, 0], size: [4, 5]}
              - {name: kitchen, corner: [4, 0], size: [3, 5]}
            above: {build-up: joisted, joists: {run: x, spacing: 0.4}}
          - name: up
            height: 2.3
            outer: brick
            inner: board
            rooms:
              - {name: bedroom, corner: [0, 0], size: [4, 5]}
              - {name: study, corner: [4, 0], size: [3, 5]}
        spots:
          - {name: shelf, level: down, at: [0.5, 0.5, 1.2]}
          - {name: rack, level: up, at: [6.5, 4.5, 0.4]}
        seats:
          - {name: sofa, level: down, at: [2, 4]}
          - {name: desk, level: up, at: [5.5, 1]}
        """,
        "house.yaml",
        SmallTables.Tables).House!;

    public static MeasurementsParseResult Read(string text, LengthUnit unit = LengthUnit.Metre) => MeasurementsFile.Parse(text, "r.csv", House, unit);

    public static string[] Problems(string text) => [.. Read(text).Problems.Select(p => p.ToString())];
}
