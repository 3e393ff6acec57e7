using CsCheck;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>A box on some level: solid by the sheet or by the metre, or a shell with some sides open.</summary>
internal static class RandomFixture
{
    private const int AllSides = 63;

    /// <summary>A fixture on one of so many levels.</summary>
    internal static Gen<Fixture> On(int levels) =>
        from level in Gen.Int[0, levels - 1]
        from centre in RandomPlace.OnPlan
        from width in RandomPlace.Metres(2, 20)
        from depth in RandomPlace.Metres(2, 20)
        from turn in Gen.OneOf(Gen.OneOf(0.0, 90, 180), Gen.Double[-180, 180])
        from bottom in Gen.OneOf(Gen.Const(0.0), RandomPlace.Metres(1, 10))
        from height in RandomPlace.Metres(2, 11)
        from material in RandomMaterial.OfAFixture
        from shell in Gen.Bool
        from open in Gen.Int[0, AllSides]
        select new Fixture("fixture", level, centre, width, depth, turn, bottom, bottom + height, material)
        {
            IsShell = shell,
            OpenSides = shell ? (BoxSides)open : BoxSides.None,
        };
}
