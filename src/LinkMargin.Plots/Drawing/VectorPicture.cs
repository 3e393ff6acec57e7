using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>A vector picture for a printed page: it stays sharp at any size, and its text stays text.</summary>
public sealed partial class VectorPicture : IDisposable
{
    private readonly SKPicture picture;
    private readonly SKRect shown;
    private readonly double pixelsPerPoint;

    internal VectorPicture(SKPicture picture, SKRect shown, double pixelsPerPoint) =>
        (this.picture, this.shown, this.pixelsPerPoint) = (picture, shown, pixelsPerPoint);

    /// <summary>Width at which its text has its nominal size, points.</summary>
    public double WidthPoints => shown.Width / pixelsPerPoint;

    /// <summary>Height at that width, points.</summary>
    public double HeightPoints => shown.Height / pixelsPerPoint;

    /// <summary>The picture as an SVG element for a page; its text uses the page's font.</summary>
    /// <param name="prefix">Start of every id, so that one page can have several pictures; letters and digits.</param>
    /// <param name="description">What it shows, for readers who cannot see it.</param>
    public string ToSvg(string prefix, string description)
    {
        using var stream = new MemoryStream();
        using (SKCanvas canvas = SKSvgCanvas.Create(new SKRect(0, 0, shown.Width, shown.Height), stream))
        {
            DrawAt(canvas, 0, 0, 1);
        }

        string svg = Encoding.UTF8.GetString(stream.ToArray());
        int content = svg.IndexOf('>', svg.IndexOf("<svg", StringComparison.Ordinal)) + 1;

        // The library numbers its ids through a whole run; they are renumbered here, so that the same picture gives the same text.
        Dictionary<string, int> names = [];
        string inner = IdsAndReferences().Replace(svg[content..svg.LastIndexOf("</svg>", StringComparison.Ordinal)], match =>
        {
            names.TryAdd(match.Groups[2].Value, names.Count + 1);
            return string.Create(CultureInfo.InvariantCulture, $"{match.Groups[1].Value}{prefix}{names[match.Groups[2].Value]}");
        });
        inner = EndOfList().Replace(inner, "\"");
        string title = new StringBuilder(description).Replace("&", "&amp;").Replace("<", "&lt;").Replace(">", "&gt;").ToString();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"""<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" role="img" viewBox="0 0 {shown.Width:0.##} {shown.Height:0.##}" style="width:{WidthPoints:0.##}pt"><title>{title}</title>{inner}</svg>""");
    }

    /// <summary>Draws it with its upper left corner at a place.</summary>
    internal void DrawAt(SKCanvas canvas, double x, double y, double scale)
    {
        canvas.Save();
        canvas.Translate((float)x, (float)y);
        canvas.Scale((float)scale);
        canvas.ClipRect(new SKRect(0, 0, shown.Width, shown.Height));
        canvas.Translate(-shown.Left, -shown.Top);
        canvas.DrawPicture(picture);
        canvas.Restore();
    }

    /// <summary>The scale for a width in points, for <see cref="DrawAt"/> on a page measured in points.</summary>
    internal double ScaleFor(double widthPoints) => widthPoints / shown.Width;

    /// <inheritdoc/>
    public void Dispose() => picture.Dispose();

    // The library ends lists of positions with a comma, which is not valid.
    [GeneratedRegex(@",\s*""", RegexOptions.CultureInvariant)]
    private static partial Regex EndOfList();

    [GeneratedRegex("""(\bid="|url\(#|href="#)([^")]+)""", RegexOptions.CultureInvariant)]
    private static partial Regex IdsAndReferences();
}
