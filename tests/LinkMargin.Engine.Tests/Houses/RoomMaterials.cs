using CsCheck;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>
/// Materials of roomed houses: some of layers, some by their loss alone, from none to nearly opaque. Properties are those of
/// Recommendation ITU-R P.2040-3 (08/2023), Table 3; the losses are invented.
/// </summary>
internal static class RoomMaterials
{
    private static readonly Dielectric Plasterboard = new(2.73, 0, 0.0085, 0.9395);
    private static readonly Dielectric Brick = new(3.91, 0, 0.0238, 0.16);
    private static readonly Dielectric Glass = new(6.31, 0, 0.0036, 1.3394);
    private static readonly Dielectric Chipboard = new(2.58, 0, 0.0217, 0.78);

    internal static readonly Material Stud = SimpleHouse.Material("stud", 3.5) with
    {
        ThicknessMetres = 0.115,
        Layers =
        [
            new Layer(Plasterboard, "plasterboard", 0.0125, 0),
            new Layer(null, "air", 0.09, 0),
            new Layer(Plasterboard, "plasterboard", 0.0125, 0),
        ],
    };

    internal static readonly Material BrickWall =
        SimpleHouse.Material("brick", 6) with { ThicknessMetres = 0.102, Dielectric = Brick };

    internal static readonly Material Steel = SimpleHouse.Material("steel", 40);

    private static readonly Material Pane = SimpleHouse.Material("pane", 2) with { ThicknessMetres = 0.006, Dielectric = Glass };

    private static readonly Material Board =
        SimpleHouse.Material("board", 1.7) with { ThicknessMetres = 0.018, Dielectric = Chipboard };

    private static readonly Material Leaf = SimpleHouse.Material("leaf", 2.5);

    private static readonly Material Nothing = SimpleHouse.Material("nothing", 0);

    private static readonly Material Vault = SimpleHouse.Material("vault", 80);

    private static readonly Material Water =
        SimpleHouse.Material("water", 40) with { Form = LossForm.Bulk, ThicknessMetres = 0.4 };

    internal static readonly Gen<Material> OfAWall = Gen.OneOf(Stud, Stud, BrickWall, BrickWall, Steel, Vault, Nothing);

    internal static readonly Gen<Material> OfALeaf = Gen.OneOf(Leaf, Pane, Steel);

    internal static readonly Gen<Material> OfAFixture = Gen.OneOf(Steel, Board, Water, Leaf);

    internal static readonly FloorBuildUp Joisted = new(
        "joisted",
        [
            new FloorLayer(Board, 0.018, null),
            new FloorLayer(null, 0.2, new Ribs(SimpleHouse.Material("joist", 4), 0.05, 0.2, 0.4)),
            new FloorLayer(SimpleHouse.Material("ceiling", 1), 0.0125, null),
        ],
        "invented for tests");

    private static readonly FloorBuildUp Slab =
        new("slab", [new FloorLayer(SimpleHouse.Material("slab", 16), 0.2, null)], "invented for tests");

    private static readonly FloorBuildUp Sheet =
        new("sheet", [new FloorLayer(SimpleHouse.Material("deck", 60), 0.1, null)], "invented for tests");

    internal static readonly Gen<FloorBuildUp> OfAFloor = Gen.OneOf(Joisted, Joisted, Slab, Sheet);
}
