using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Diffuse;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>How an outer face of a house is seen from places outdoors about its plane.</summary>
public sealed class FacetRimTests
{
    private const double RimMetres = 0.06;

    // At a distance from a face its rim matters less than this.
    private const double FarShare = 5e-3;

    // Of any place beside the face by this much a step of a centimetre changes the view by less than the law of no jumps allows.
    private const double BesideMetres = 0.3, MostDb = 1.5;

    private static readonly Gen<double> Half = Gen.Double[0.15, 3];

    private static readonly Gen<double> Side = Gen.Double[-0.99, 0.99];

    [Fact, Law]
    public void From_straight_in_front_it_is_seen_as_without_a_rim() =>
        Gen.Select(Half, Half, Side, Side, Gen.Double[0.001, 4]).ForAll((a, b, x, y, away) =>
            Assert.Equal(Angle(a, b, new(x * a, y * b, away), 0), Angle(a, b, new(x * a, y * b, away), RimMetres)));

    [Fact, Law]
    public void From_well_in_front_of_its_plane_it_is_seen_about_as_without_a_rim() =>
        Gen.Select(Half, Half, Gen.Double[-6, 6], Gen.Double[-6, 6], Gen.Double[1, 4]).ForAll((a, b, x, y, away) =>
        {
            double plain = Angle(a, b, new(x, y, away), 0);
            Assert.Equal(plain, Angle(a, b, new(x, y, away), RimMetres), FarShare * plain);
        });

    [Fact, Law]
    public void A_step_of_a_centimetre_beside_it_hardly_changes_how_it_is_seen() =>
        Gen.Select(Half, Half, Gen.Double[BesideMetres, 6], Side, Gen.Double[-0.2, 0.2], Gen.Double[0, Math.PI]).ForAll((a, b, beside, y, away, turn) =>
        {
            var place = new Point3(a + beside, y * b, away);
            Point3 next = place + (0.01 * new Point3(Math.Cos(turn), 0, Math.Sin(turn)));
            double change = 10 * Math.Log10(Angle(a, b, next, RimMetres) / Angle(a, b, place, RimMetres));
            Assert.InRange(change, -MostDb, MostDb);
        });

    [Fact, Law]
    public void From_behind_its_plane_it_is_seen_ever_less() =>
        Gen.Select(Half, Half, Gen.Double[-6, 6], Side, Gen.Double[RimMetres, 2]).ForAll((a, b, x, y, behind) =>
            Assert.InRange(
                Angle(a, b, new(x, y * b, -behind), RimMetres), 0, RimMetres * RimMetres / ((behind * behind) + (RimMetres * RimMetres)) * Math.PI));

    private static double Angle(double a, double b, Point3 from, double rimMetres)
    {
        var facet = new Facet(-1, [], [new(-a, -b, 0), new(a, -b, 0), new(a, b, 0), new(-a, b, 0)]) { Normal = new(0, 0, 1) };
        var angles = new double[FacetAngles.Room(1)];
        new FacetAngles([facet], rimMetres).From(from, angles);
        return angles[0];
    }
}
