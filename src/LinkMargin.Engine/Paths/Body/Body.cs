using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Paths.Body;

/// <summary>
/// A seated player, as two boxes behind the hands. Sizes are those of an adult of middle build, rounded (common practice in
/// furniture design): shoulders 0.44 m wide, chest 0.24 m deep, head 0.16 m by 0.20 m, hands a forearm before the chest.
/// </summary>
internal static class Body
{
    /// <summary>From the hands back to the middle of the chest, metres.</summary>
    internal const double BehindHandsMetres = 0.32;

    private const double ChestDepthMetres = 0.24;

    /// <summary>
    /// A torso, as the row <c>person</c> of the material table states it: 11 dB with diffraction included, for the straight
    /// line alone; through it wet tissue takes some 3 dB a centimetre at 2.4 GHz (from memory), so nothing that matters passes
    /// and what goes round decides. What it reflects and what it takes from a diffuse field follow from muscle's
    /// permittivity 52.7 and conductivity 1.74 S/m at 2.45 GHz (C. Gabriel et al., 1996; from memory). Stated as a material of
    /// its own so that nobody's table changes it.
    /// </summary>
    internal static Material Tissue { get; } = new("person", 11, 4, "as the row person; 3 dB for each centimetre of wet tissue, from memory")
    {
        ThroughDb = 40,
        ThicknessMetres = ChestDepthMetres,
        Dielectric = new Dielectric(52.7, 0, 1.74, 0),
    };

    /// <summary>Torso and head of the player on a seat; nothing where the seat does not say where it faces.</summary>
    internal static Fixture[] Of(Seat seat) => seat.FacingDegrees is double facing
        ? [.. Of(seat.LevelIndex, seat.Plan, seat.HandsMetres, facing, $"player at {seat.Name}").Select(part => part with { Seat = seat })]
        : [];

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
            new Fixture(name, level, chest, ChestDepthMetres, 0.44, facingDegrees, handsMetres - 0.25, handsMetres + 0.35, Tissue),
            new Fixture(name, level, chest, 0.20, 0.16, facingDegrees, handsMetres + 0.35, handsMetres + 0.65, Tissue),
        ];
    }

    /// <summary>Amplitude that passes through.</summary>
    internal static double Amplitude => Math.Sqrt(Decibels.ToPowerRatio(-Tissue.ThroughDb!.Value));
}
