using System.Numerics;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Paths.Body;

/// <summary>
/// A seated player. Sizes are medians of 4082 men of ANSUR II (C. C. Gordon et al., 2012 Anthropometric Survey of U.S. Army Personnel,
/// NATICK/TR-15/007, 2014; public data): chest 289 mm broad and 253 mm deep, waist 325 mm and 234 mm, head 154 mm and 200 mm; above the
/// seat the elbows are 246 mm, the crown 918 mm. Women's are 3 % to 11 % less. The upper arms are not counted.
/// </summary>
internal static class Body
{
    /// <summary>
    /// From the hands back to the middle of the chest, metres: common practice. A forearm from elbow to grip is 0.35 m (ANSUR II, from
    /// memory); hands that meet in front of elbows 0.5 m apart are 0.25 m in front of them, and the upper arms reach slightly forwards.
    /// </summary>
    internal const double BehindHandsMetres = 0.32;

    /// <summary>Radius of a circle of the same area as an ellipse as broad and deep as the torso, mean of chest and waist, metres.</summary>
    internal const double TorsoRadiusMetres = 0.137;

    /// <summary>The same for the head, metres.</summary>
    internal const double HeadRadiusMetres = 0.088;

    /// <summary>The seat, above the hands, which are held as high as the elbows, metres.</summary>
    internal const double SeatMetres = -0.25;

    /// <summary>The shoulders, above the hands, metres (0.60 m above the seat, from memory).</summary>
    internal const double ShouldersMetres = 0.35;

    /// <summary>The crown, above the hands, metres.</summary>
    internal const double CrownMetres = 0.67;

    // Mean of chest and waist, metres: an ellipse of these has the radius above.
    private const double TorsoBreadthMetres = 0.307;
    private const double TorsoDepthMetres = 0.244;
    private const double HeadBreadthMetres = 0.154;
    private const double HeadLengthMetres = 0.200;

    // Skin of a person of 75 kg and 1.75 m, square metres, by Du Bois' formula (from memory).
    private const double SkinSquareMetres = 1.9;

    /// <summary>
    /// Ratio of a person's skin to the faces of the two boxes, which have no arms or legs, for somebody in another seat: a diffuse field
    /// strikes all of the skin.
    /// </summary>
    internal const double SkinOverBoxes = SkinSquareMetres / (2 * ((TorsoBreadthMetres * TorsoDepthMetres)
        + ((TorsoBreadthMetres + TorsoDepthMetres) * (ShouldersMetres - SeatMetres)) + (HeadBreadthMetres * HeadLengthMetres)
        + ((HeadBreadthMetres + HeadLengthMetres) * (CrownMetres - ShouldersMetres))));

    /// <summary>
    /// Somebody in another seat, as in the row <c>person</c> of the material table: 11 dB with diffraction included, for the
    /// straight line alone. Wet tissue loses about 3 dB per centimetre at 2.4 GHz (from memory), so nothing that matters passes through
    /// and what goes round decides. Muscle has permittivity 52.74 and conductivity 1.732 S/m at 2.44 GHz (four-term Cole-Cole model of
    /// S. Gabriel et al., Physics in Medicine and Biology 41, 1996). It is a material of its own so that no user's table changes it.
    /// </summary>
    internal static Material Tissue { get; } = new("person", 11, 4, "as the row person; 3 dB for each centimetre of wet tissue, from memory")
    {
        ThroughDb = 40,
        ThicknessMetres = TorsoDepthMetres,
        Dielectric = new Dielectric(52.74, 0, 1.732, 0),
    };

    /// <summary>
    /// Area of a perfect absorber that absorbs as much of a diffuse field as a person, m²: the field strikes skin like any surface, and
    /// skin absorbs the share that a cylinder like the torso absorbs of a wave. A quarter of it is the absorption cross section, 0.23 m²;
    /// measured in rooms: 0.18 m² to 0.45 m² over 1 GHz to 8.5 GHz.
    /// </summary>
    internal static double AbsorbingSquareMetres(Complex permittivity, double wavelengthMetres) =>
        SkinSquareMetres * LossyCylinder.AbsorbedShare(TorsoRadiusMetres, permittivity, wavelengthMetres);

    /// <summary>Torso and head of the player in a seat; none where the seat does not say where it faces.</summary>
    internal static Fixture[] Of(Seat seat) => seat.FacingDegrees is double facing
        ? [.. Of(seat.LevelIndex, seat.Plan, seat.HandsMetres, facing, $"player at {seat.Name}").Select(part => part with { Seat = seat })]
        : [];

    // Torso and head as boxes, for people who are obstacles to other links.
    private static Fixture[] Of(int level, Point2 hands, double handsMetres, double facingDegrees, string name)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(facingDegrees));
        Point2 chest = hands - (BehindHandsMetres * new Point2(cos, sin));
        double shoulders = handsMetres + ShouldersMetres;
        return
        [
            new Fixture(name, level, chest, TorsoDepthMetres, TorsoBreadthMetres, facingDegrees, handsMetres + SeatMetres, shoulders, Tissue),
            new Fixture(name, level, chest, HeadLengthMetres, HeadBreadthMetres, facingDegrees, shoulders, handsMetres + CrownMetres, Tissue),
        ];
    }
}
