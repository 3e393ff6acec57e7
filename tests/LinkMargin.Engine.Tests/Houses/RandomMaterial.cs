using CsCheck;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>Materials with invented losses: some equal, one lossless, one nearly opaque.</summary>
internal static class RandomMaterial
{
    private static readonly Material[] Sheets =
    [
        Sheet("air-board", 0),
        Sheet("thin-board", 0.5),
        Sheet("stud", 3),
        Sheet("stud-again", 3),
        Sheet("block", 6.9),
        Sheet("stone", 12.5),
        Sheet("steel", 26),
        Sheet("vault", 60),
    ];

    private static readonly Material[] Bulks =
    [
        Sheet("water", 40) with { Form = LossForm.Bulk, ThicknessMetres = 0.4 },
        Sheet("masonry", 9) with { Form = LossForm.Bulk, ThicknessMetres = 0.1 },
    ];

    internal static readonly Gen<Material> OfASheet = Gen.OneOf(Sheets);

    internal static readonly Gen<Material> OfAFixture = Gen.OneOf(Gen.OneOf(Sheets), Gen.OneOf(Bulks));

    private static Material Sheet(string name, double lossDb) => new(name, lossDb, 1, "invented for tests");
}
