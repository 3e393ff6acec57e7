using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The facets of one cell, laid out so that the solid angles under which a place sees them are computed eight at a time, by the formula
/// of <see cref="Facet.SolidAngle"/>. The angles of a facet's two triangles are added as the arguments of complex numbers.
/// </summary>
internal sealed class FacetAngles
{
    private const int Lanes = 8;
    private const int Corners = 4;

    private readonly double[] numbers; // group by group: the first number of eight facets, then the second, and so on
    private readonly int count;

    /// <summary>Lays out facets of four corners.</summary>
    internal FacetAngles(IReadOnlyList<Facet> facets)
    {
        count = facets.Count;
        numbers = new double[(count + Lanes - 1) / Lanes * Lanes * Row.Numbers];
        for (int i = 0; i < count; i++)
        {
            Facet facet = facets[i];
            Span<double> row = numbers.AsSpan((i / Lanes * Lanes * Row.Numbers) + (i % Lanes));
            for (int corner = 0; corner < Corners; corner++)
            {
                Put(row, Row.Corner + (3 * corner), facet.Outline[corner]);
            }

            // A facet that counts from both sides gets no normal.
            Put(row, Row.Normal, facet.IsMean ? default : facet.Normal ?? default);
            Point3 across = facet.DoubleArea();
            Put(row, Row.Hair, Facet.Hair / across.Length * across);
        }
    }

    /// <summary>Writes the solid angle of each facet, steradians.</summary>
    /// <param name="from">The place.</param>
    /// <param name="angles">Receives them; has room for whole groups of eight facets.</param>
    internal void From(Point3 from, Span<double> angles)
    {
        Vector512<double> hair = Vector512.Create(Facet.Hair);
        for (int group = 0; group < count; group += Lanes)
        {
            ReadOnlySpan<double> rows = numbers.AsSpan(group * Row.Numbers, Lanes * Row.Numbers);
            var at = Vectors.Of(from);
            Vectors to = Vectors.At(rows, Row.Corner) - at;
            Vector512<double> isBehind = Vector512.GreaterThan(Vectors.At(rows, Row.Normal).Dot(to), hair);
            if (isBehind.ExtractMostSignificantBits() == (1ul << Lanes) - 1)
            {
                angles.Slice(group, Lanes).Clear();
                continue;
            }

            // In a facet's own plane the formula cannot tell inside from outside: the place is moved off it by a hair.
            Vectors aside = Vectors.At(rows, Row.Hair);
            Vector512<double> isInPlane = Vector512.LessThan(Vector512.Abs(aside.Dot(to)), hair * hair);
            at += aside.Where(isInPlane);
            Vectors a = Vectors.At(rows, Row.Corner) - at, b = Vectors.At(rows, Row.Corner + 3) - at;
            Vectors c = Vectors.At(rows, Row.Corner + 6) - at, d = Vectors.At(rows, Row.Corner + 9) - at;
            Vector512<double> la = a.Length, lb = b.Length, lc = c.Length, ld = d.Length, ac = a.Dot(c);
            Vector512<double> y1 = a.Dot(b.Cross(c)), x1 = (la * lb * lc) + (a.Dot(b) * lc) + (b.Dot(c) * la) + (ac * lb);
            Vector512<double> y2 = a.Dot(c.Cross(d)), x2 = (la * lc * ld) + (ac * ld) + (c.Dot(d) * la) + (d.Dot(a) * lc);
            Vector512<double> angle = 2 * ArcTangent.Of(Vector512.Abs((x1 * y2) + (x2 * y1)), (x1 * x2) - (y1 * y2));
            Vector512.AndNot(angle, isBehind).CopyTo(angles[group..]);
        }
    }

    /// <summary>How many numbers whole groups of eight need for a number of facets.</summary>
    internal static int Room(int facets) => (facets + Lanes - 1) / Lanes * Lanes;

    private static void Put(Span<double> row, int number, Point3 point)
    {
        row[Lanes * number] = point.X;
        row[Lanes * (number + 1)] = point.Y;
        row[Lanes * (number + 2)] = point.Z;
    }

    private static Vector512<double> Load(ReadOnlySpan<double> rows, int number) => Vector512.Create(rows.Slice(Lanes * number, Lanes));

    // The numbers of a facet.
    private static class Row
    {
        internal const int Corner = 0;
        internal const int Normal = 3 * Corners;
        internal const int Hair = Normal + 3;
        internal const int Numbers = Hair + 3;
    }

    // Eight points.
    private readonly record struct Vectors(Vector512<double> X, Vector512<double> Y, Vector512<double> Z)
    {
        internal Vector512<double> Length => Vector512.Sqrt(Dot(this));

        internal static Vectors Of(Point3 point) => new(Vector512.Create(point.X), Vector512.Create(point.Y), Vector512.Create(point.Z));

        internal static Vectors At(ReadOnlySpan<double> rows, int number) => new(Load(rows, number), Load(rows, number + 1), Load(rows, number + 2));

        public static Vectors operator -(Vectors a, Vectors b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

        public static Vectors operator +(Vectors a, Vectors b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

        internal Vectors Where(Vector512<double> isMeant) => new(X & isMeant, Y & isMeant, Z & isMeant);

        internal Vector512<double> Dot(Vectors b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

        internal Vectors Cross(Vectors b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));
    }
}
