using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Links;

/// <summary>
/// A seated player, as two boxes behind the hands. Sizes are those of an adult of middle build, rounded (common practice in
/// furniture design): shoulders 0.44 m wide, chest 0.24 m deep, head 0.16 m by 0.20 m, hands a forearm before the chest.
/// </summary>
internal static class Body
{
    /// <summary>From the hands back to the middle of the chest, metres.</summary>
    internal const double BehindHandsMetres = 0.32;

    /// <summary>
    /// Through a torso: wet tissue takes some 3 dB a centimetre at 2.4 GHz (from memory), so nothing that matters passes and
    /// what goes round decides. Stated as a material of its own so that nobody's table changes it.
    /// </summary>
    internal static Material Tissue { get; } = new("player", 40, 5, "from memory: 3 dB for each centimetre of wet tissue");

    /// <summary>Torso and head of a player whose hands are at a place.</summary>
    /// <param name="level">The level.</param>
    /// <param name="hands">Where the hands are on the plan.</param>
    /// <param name="handsMetres">Height of the hands above the level's floor.</param>
    /// <param name="facingDegrees">Where the player looks, degrees anticlockwise from the x axis.</param>
    /// <param name="name">What to call it.</param>
    internal static Fixture[] Of(int level, Point2 hands, double handsMetres, double facingDegrees, string name)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(facingDegrees));
        Point2 chest = hands - (BehindHandsMetres * new Point2(cos, sin));
        return
        [
            new Fixture(name, level, chest, 0.24, 0.44, facingDegrees, handsMetres - 0.25, handsMetres + 0.35, Tissue),
            new Fixture(name, level, chest, 0.20, 0.16, facingDegrees, handsMetres + 0.35, handsMetres + 0.65, Tissue),
        ];
    }

    /// <summary>Amplitude that passes through.</summary>
    internal static double Amplitude => Math.Sqrt(Decibels.ToPowerRatio(-Tissue.LossDb));
}
