using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>What lies between two levels: layers, perhaps a bay of joists at any angle, perhaps holes.</summary>
internal static class RandomFloor
{
    private static readonly Gen<FloorLayer> PlainLayer =
        from material in RandomMaterial.OfASheet
        from thickness in RandomPlace.Metres(1, 2).Select(m => m / 10)
        from empty in Gen.Int[0, 3]
        select new FloorLayer(empty == 0 ? null : material, thickness, null);

    private static readonly Gen<FloorLayer> JoistBay =
        from material in RandomMaterial.OfASheet
        from filled in Gen.Bool
        from filling in RandomMaterial.OfASheet
        from width in Gen.Double[0.03, 0.08]
        from depth in RandomPlace.Metres(1, 3)
        select new FloorLayer(filled ? filling : null, depth, new Ribs(material, width, depth, 0.4));

    private static readonly Gen<JoistLayout> Layout =
        from run in Gen.OneOf(Gen.OneOf(0.0, 90, 45), Gen.Double[-180, 180])
        from spacing in RandomPlace.Metres(3, 6)
        from known in Gen.Bool
        from first in RandomPlace.Metres(0, 6)
        select new JoistLayout(run, spacing, known ? first : null);

    private static readonly Gen<Polygon> Rectangle =
        from corner in RandomPlace.OnPlan
        from width in RandomPlace.Metres(5, 40)
        from depth in RandomPlace.Metres(5, 40)
        select new Polygon(
        [
            corner,
            corner + new Point2(width, 0),
            corner + new Point2(width, depth),
            corner + new Point2(0, depth),
        ]);

    internal static readonly Gen<FloorAbove> Any =
        from upper in PlainLayer.Array[1, 2]
        from bay in JoistBay
        from lower in PlainLayer.Array[0, 2]
        from joisted in Gen.Bool
        from layout in Layout
        from voids in Gen.OneOf(Rectangle, RandomPlace.Triangle).Array[0, 2]
        select new FloorAbove(
            new FloorBuildUp("build-up", joisted ? [.. upper, bay, .. lower] : [.. upper, .. lower], "invented for tests"),
            joisted ? layout : null,
            voids);
}
