using System.Globalization;
using System.Text;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Web.Drawing;

/// <summary>Shapes as SVG path data: metres, to a millimetre, y pointing north.</summary>
internal static class ShapeText
{
    /// <summary>A closed outline.</summary>
    public static string Closed(IReadOnlyList<Point2> corners) => Line(corners) + "Z";

    /// <summary>Outlines as one shape.</summary>
    public static string All(IEnumerable<IReadOnlyList<Point2>> outlines) => string.Concat(outlines.Select(Closed));

    /// <summary>An open line.</summary>
    public static string Line(params IReadOnlyList<Point2> points)
    {
        var text = new StringBuilder();
        for (int i = 0; i < points.Count; i++)
        {
            text.Append(i == 0 ? 'M' : 'L').Append(Number(points[i].X)).Append(' ').Append(Number(points[i].Y));
        }

        return text.ToString();
    }

    /// <summary>A rectangle along the axes.</summary>
    public static string Box(double fromX, double fromY, double toX, double toY) =>
        Closed([new Point2(fromX, fromY), new Point2(toX, fromY), new Point2(toX, toY), new Point2(fromX, toY)]);

    /// <summary>A coordinate.</summary>
    public static string Number(double metres) => (Math.Round(metres, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);
}
