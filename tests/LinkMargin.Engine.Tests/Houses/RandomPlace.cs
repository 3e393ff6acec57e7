using CsCheck;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>
/// Lengths and points as people give them, half of them in whole decimetres: then lines run along walls, through corners
/// and jambs and along faces far more often than chance alone would have it.
/// </summary>
internal static class RandomPlace
{
    private const double LeastSquareMetres = 0.001;

    /// <summary>East or north, metres, within a house of 12 m.</summary>
    internal static readonly Gen<double> Coordinate = Metres(-60, 60);

    internal static readonly Gen<Point2> OnPlan = Gen.Select(Coordinate, Coordinate, (x, y) => new Point2(x, y));

    /// <summary>A triangle that encloses something, as a house file must have it.</summary>
    internal static readonly Gen<Polygon> Triangle =
        OnPlan.Array[3].Select(corners => new Polygon(corners)).Where(triangle => triangle.AreaSquareMetres > LeastSquareMetres);

    /// <summary>A height that a hand or a shelf may have over a floor.</summary>
    internal static readonly Gen<double> Height = Metres(1, 21);

    /// <summary>A length between two numbers of decimetres.</summary>
    internal static Gen<double> Metres(int leastDecimetres, int mostDecimetres) => Gen.OneOf(
        Gen.Int[leastDecimetres, mostDecimetres].Select(i => i / 10.0),
        Gen.Double[leastDecimetres / 10.0, mostDecimetres / 10.0]);
}
