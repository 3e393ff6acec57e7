namespace LinkMargin.Files.Tests.Houses;

/// <summary>How much has to be written for a small home.</summary>
public sealed class FlatTests
{
    internal const string Flat = """
        house: Five rooms
        levels:
          - name: flat
            height: 2.5
            outer: brick-215
            inner: drywall-stud
            rooms:
              - {name: living room, corner: [0, 0], size: [4.8, 4.2]}
              - {name: kitchen, corner: [4.8, 0], size: [2.8, 4.2]}
              - {name: hall, corner: [0, 4.2], size: [7.6, 1.3]}
              - {name: bedroom, corner: [0, 5.5], size: [4.4, 3.6]}
              - {name: bathroom, corner: [4.4, 5.5], size: [3.2, 3.6]}
            doors:
              - {between: [living room, hall], material: door-glazed, open: true}
              - {between: [kitchen, hall], material: door-hollow}
              - {between: [bedroom, hall], material: door-hollow}
              - {between: [bathroom, hall], material: door-hollow}
              - {room: hall, side: west, width: 0.9, material: door-solid}
            windows:
              - {room: living room, side: south, width: 2.2, material: glass-double}
              - {room: kitchen, side: south, width: 1.2, material: glass-double}
              - {room: bedroom, side: north, width: 1.6, material: glass-double}
        fixtures:
          - {name: television, box: [1.6, 0.1, 3.0, 0.2], from: 0.6, to: 1.4, material: flat-screen}
          - {name: wardrobe, box: [0, 8.5, 2.0, 9.1], to: 2.1, material: wardrobe}
        spots:
          - {name: under the television, at: [2.3, 0.3, 0.4]}
          - {name: hall cupboard, at: [7.2, 4.8, 1.8]}
        seats:
          - {name: sofa, at: [2.3, 3.2], facing: television}
          - {name: bed, at: [2.2, 7.4], hands: 0.8}
          - {name: kitchen table, at: [6.2, 1.6]}
        """;

    [Fact]
    public void A_flat_of_five_rooms_fits_in_forty_lines() => Assert.InRange(Flat.Split('\n').Length, 10, 40);
}
