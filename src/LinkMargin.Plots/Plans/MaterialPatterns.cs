using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>The patterns of all wall materials of a house, the same on all its levels.</summary>
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

    /// <summary>Entries of a key: each material with its thickness and loss.</summary>
    public IEnumerable<KeyEntry> Entries(double pixelsPerPoint, LengthUnit unit) => materials.Select(m => new KeyEntry(
        22,
        Words(m, unit),
        (canvas, box) => DrawSample(canvas, box, Of(m), pixelsPerPoint)));

    private static string Words(Material material, LengthUnit unit)
    {
        double? thickness = material.ThicknessMetres ?? (material.Layers.Count > 0 ? WallShape.ThicknessOf(material) : null);
        string thick = thickness is not double t ? ""
            : unit == LengthUnit.Foot
                ? string.Create(CultureInfo.InvariantCulture, $", {t / LengthTicks.MetresPerFoot * 12:0.#} in")
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
