using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Building;

/// <summary>The patterns of a house's wall materials, the same on all its levels.</summary>
internal sealed class MaterialPatterns
{
    private readonly List<Material> materials;

    public MaterialPatterns(House house)
    {
        materials =
        [
            .. house.Levels.SelectMany(l => l.Walls).Select(w => w.Material)
                .DistinctBy(m => m.Name)
                .OrderByDescending(m => m.LossDb)
                .ThenBy(m => m.Name, StringComparer.Ordinal),
        ];
    }

    public MaterialPattern Of(Material material) =>
        MaterialPattern.For(materials.FindIndex(m => m.Name == material.Name), materials.Count);

    /// <summary>Key entries: each material with its thickness and loss.</summary>
    public IEnumerable<KeyEntry> Entries(double pixelsPerPoint, LengthUnit unit) => materials.Select(m => new KeyEntry(
        22,
        Words(m, unit),
        (canvas, box) => DrawSample(canvas, box, Of(m), pixelsPerPoint)));

    private static string Words(Material material, LengthUnit unit)
    {
        double? thickness = material.ThicknessMetres ?? (material.Layers.Count > 0 ? WallShape.ThicknessOf(material) : null);
        string thick = thickness is not double t ? ""
            : unit == LengthUnit.Foot
                ? string.Create(CultureInfo.InvariantCulture, $", {t / LengthUnits.MetresPerFoot * 12:0.#} in")
                : string.Create(CultureInfo.InvariantCulture, $", {t * 1000:0} mm");
        return string.Create(CultureInfo.InvariantCulture, $"{material.Name}{thick}, {material.LossDb:0.#} dB");
    }

    private static void DrawSample(SKCanvas canvas, LabelBox box, MaterialPattern pattern, double pixelsPerPoint)
    {
        using var outline = new SKPath();
        outline.AddRect(new SKRect((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom));
        pattern.Fill(canvas, outline, pixelsPerPoint);
        using SKPaint rim = Pen.Line(Palette.Ink, 0.8 * pixelsPerPoint);
        canvas.DrawPath(outline, rim);
    }
}

/// <summary>
/// The fill of cut walls of one material on a plan: from solid ink for the highest loss to bare paper for the
/// lowest.
/// </summary>
internal sealed class MaterialPattern
{
    private const double LinePoints = 0.75;

    /// <summary>How many patterns there are.</summary>
    public const int Count = 8;

    private readonly int number;

    private MaterialPattern(int number) => this.number = number;

    /// <summary>The pattern of one of several materials in order of falling loss; with more than eight they repeat.</summary>
    public static MaterialPattern For(int index, int materials) =>
        new(materials > Count ? index % Count : materials == 1 ? 0 : (int)Math.Round(index * (Count - 1.0) / (materials - 1)));

    /// <summary>Fills an outline on a white background and draws its rim.</summary>
    public void Fill(SKCanvas canvas, SKPath outline, double pixelsPerPoint)
    {
        using SKPaint ground = Pen.Fill(Ground);
        canvas.DrawPath(outline, ground);
        SKRect bounds = outline.Bounds;
        using SKPath strokes = Strokes(new(bounds.Left, bounds.Top, bounds.Right, bounds.Bottom), pixelsPerPoint);
        using SKPaint line = Pen.Line(Palette.Ink, LinePoints * pixelsPerPoint);
        canvas.Save();
        canvas.ClipPath(outline, antialias: true);
        canvas.DrawPath(strokes, line);
        canvas.Restore();
    }

    private SKColor Ground => number switch
    {
        0 => Palette.Ink,
        3 => Palette.SoftInk,
        6 => Palette.FaintInk,
        _ => Palette.Paper,
    };

    private SKPath Strokes(LabelBox box, double pixelsPerPoint)
    {
        var path = new SKPath();
        switch (number)
        {
            case 1:
                Slanted(path, box, 3.2 * pixelsPerPoint, rises: true);
                Slanted(path, box, 3.2 * pixelsPerPoint, rises: false);
                break;
            case 2:
                Slanted(path, box, 2.4 * pixelsPerPoint, rises: true);
                break;
            case 4:
                Slanted(path, box, 4 * pixelsPerPoint, rises: false);
                break;
            case 5:
                Slanted(path, box, 7 * pixelsPerPoint, rises: true);
                break;
        }

        return path;
    }

    // Strokes at 45 degrees, aligned to the sheet's corner so that all walls of a material match.
    private static void Slanted(SKPath path, LabelBox box, double spacing, bool rises)
    {
        double shift = spacing * Math.Sqrt(2), height = box.Height;
        double sign = rises ? 1 : -1, first = rises ? box.Left + box.Top : box.Left - box.Bottom;
        double last = rises ? box.Right + box.Bottom : box.Right - box.Top;
        for (double n = Math.Ceiling(first / shift); n * shift <= last; n++)
        {
            double x = (n * shift) - (sign * box.Top);
            path.MoveTo((float)x, (float)box.Top);
            path.LineTo((float)(x - (sign * height)), (float)box.Bottom);
        }
    }
}
