namespace LinkMargin.Plots.Printing;

/// <summary>A sheet of paper, points (1/72 inch).</summary>
/// <param name="Name">Its name.</param>
/// <param name="WidthPoints">Its width.</param>
/// <param name="HeightPoints">Its height.</param>
public sealed record PaperSize(string Name, double WidthPoints, double HeightPoints)
{
    /// <summary>210 by 297 mm (ISO 216).</summary>
    public static PaperSize A4 { get; } = new("a4", 210 / 25.4 * 72, 297 / 25.4 * 72);

    /// <summary>8 1/2 by 11 inches (ANSI/ASME Y14.1).</summary>
    public static PaperSize Letter { get; } = new("letter", 8.5 * 72, 11 * 72);
}
