using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>Tables just large enough for the tests; every figure in them is invented.</summary>
internal static class SmallTables
{
    private static readonly Material Board = new("board", 3, 1, "invented") { ThicknessMetres = 0.1 };
    private static readonly Material Brick = new("brick", 7, 2, "invented") { ThicknessMetres = 0.1 };
    private static readonly Material Leaf = new("leaf", 2, 1, "invented");
    private static readonly Material Steel = new("steel", 20, 5, "invented");
    private static readonly Material Deal = new("deal", 4, 1, "invented");

    public static MaterialTables Tables { get; } = new(
        new[] { Board, Brick, Leaf, Steel }.ToDictionary(m => m.Name),
        new[]
        {
            new FloorBuildUp("joisted", [new(Board, 0.025, null), new(null, 0.225, new Ribs(Deal, 0.05, 0.225, 0.4))], "invented"),
            new FloorBuildUp("slab", [new(Brick, 0.2, null)], "invented"),
        }.ToDictionary(b => b.Name),
        new[] { ARadio("console-typical"), ARadio("controller-typical"), ARadio("other") }.ToDictionary(r => r.Name));

    private static Radio ARadio(string name) =>
        new(name, PowerLevel.FromDbm(4), -2, PowerLevel.FromDbm(-88), 0, 3, "invented");
}
