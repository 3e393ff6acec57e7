using System.Runtime.Intrinsics;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The facets of one cell, laid out so that the solid angles under which a place sees them are computed eight at a time, by the formula
/// of <see cref="Facet.SolidAngle"/>. The angles of a facet's two triangles are added as the arguments of complex numbers.
/// <para>
/// In the plane of a facet, beside it, its light would end at once, and outdoors there may be no other. There its rim counts: from a place
/// x in front of its plane it is seen as from X = √(x² + r²) in front, and (1 + x/X)/2 of that. r is the depth of the rim, or how far the place is
/// beside the facet or behind it, if that is less. So its light falls gradually behind its plane, and from straight in front nothing changes.
/// </para>
/// </summary>
internal sealed class FacetAngles
{
    private const int Lanes = 8;
    private const int Corners = 4;

    private readonly double[] numbers; // group by group: the first number of eight facets, then the second, and so on
    private readonly int count;
    private readonly double rimMetres;

    /// <summary>Lays out facets of four corners.</summary>
    /// <param name="facets">The facets.</param>
    /// <param name="rimMetres">How deep their rims are; 0 for none.</param>
    internal FacetAngles(IReadOnlyList<Facet> facets, double rimMetres = 0)
    {
        this.rimMetres = rimMetres;
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
            Vectors to = Vectors.At(rows, Row.Corner) - at, normal = Vectors.At(rows, Row.Normal);
            Vector512<double> behind = normal.Dot(to), isBehind = Vector512.GreaterThan(behind, hair);
            Vector512<double> seen = Vector512<double>.One;
            if (rimMetres > 0)
            {
                Vector512<double> past = Vector512.Max(behind - hair, Vector512<double>.Zero);
                Vector512<double> rim = Vector512.Min(Vector512.Sqrt(BesideSquare(rows, to) + (past * past)), Vector512.Create(rimMetres));
                rim *= normal.Dot(normal); // none for a facet without a normal

                // On the edge of a facet, such as where two parts of one opening meet, rounding decides whether a place is beside it: then it is in front.
                Vector512<double> hasRim = Vector512.GreaterThan(rim, hair), front = Vector512.Sqrt((behind * behind) + (rim * rim));
                isBehind = Vector512.AndNot(isBehind, hasRim);
                seen = Vector512.ConditionalSelect(hasRim, (Vector512<double>.One - (behind / front)) / 2, seen);
                at += (normal * (behind + front)).Where(hasRim);
                to = Vectors.At(rows, Row.Corner) - at;
            }

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
            Vector512.AndNot(seen * angle, isBehind).CopyTo(angles[group..]);
        }
    }

    /// <summary>How many numbers whole groups of eight need for a number of facets.</summary>
    internal static int Room(int facets) => (facets + Lanes - 1) / Lanes * Lanes;

    // How far beside each facet a place is, measured in its plane, squared; 0 in front of it or behind it.
    private static Vector512<double> BesideSquare(ReadOnlySpan<double> rows, Vectors to)
    {
        Vectors first = Vectors.At(rows, Row.Corner);
        return Past(Vectors.At(rows, Row.Corner + 3) - first) + Past(Vectors.At(rows, Row.Corner + 9) - first);

        Vector512<double> Past(Vectors side)
        {
            Vector512<double> square = side.Dot(side), share = -side.Dot(to) / square;
            Vector512<double> past = Vector512.Max(Vector512<double>.Zero, Vector512.Max(-share, share - Vector512<double>.One));
            return past * past * square;
        }
    }

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

        public static Vectors operator *(Vectors a, Vector512<double> b) => new(a.X * b, a.Y * b, a.Z * b);

        internal Vectors Where(Vector512<double> isMeant) => new(X & isMeant, Y & isMeant, Z & isMeant);

        internal Vector512<double> Dot(Vectors b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

        internal Vectors Cross(Vectors b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));
    }
}
