using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Charts;

/// <summary>Levels read against levels predicted, a panel for each law, all on the same axes.</summary>
public static class FitPicture
{
    private const double PanelPoints = 230;
    private const double BetweenPoints = 28;
    private const double HeadPoints = 34;
    private const double LeftPoints = 40;
    private const double BelowPoints = 36;
    private const double KeyPoints = 20;

    /// <summary>The size at which its panels are square and easily read.</summary>
    public static PictureSize FittingSize(FitRequest request, double pixelsPerPoint = 2.5)
    {
        ArgumentNullException.ThrowIfNull(request);
        double width = (request.Panels.Count * PanelPoints) + ((request.Panels.Count - 1) * BetweenPoints) + LeftPoints + (2 * Page.MarginPoints);
        int widthPixels = (int)Math.Ceiling(Math.Max(width, PictureSize.LeastPoints) * pixelsPerPoint);
        double height = ((PanelPoints + HeadPoints + BelowPoints + KeyPoints) * pixelsPerPoint)
            + Page.FurniturePixels(widthPixels, pixelsPerPoint, request.Title, request.Caption);
        return new(widthPixels, PictureSize.NearestAllowed(height, pixelsPerPoint), pixelsPerPoint);
    }

    /// <summary>Draws it; the bytes are a PNG.</summary>
    public static byte[] Render(FitRequest request, PictureSize size)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(size);
        double s = size.PixelsPerPoint;
        using var page = new Page(size, request.Title, request.Caption);
        LabelBox body = page.Body;
        int count = request.Panels.Count;
        double left = body.Left + (LeftPoints * s), between = BetweenPoints * s;
        double side = Math.Min(
            (body.Right - left - ((count - 1) * between)) / count, body.Height - ((HeadPoints + BelowPoints + KeyPoints) * s));
        double top = body.Top + (HeadPoints * s);
        DecibelAxis range = LevelAxis.Of(request.Panels.SelectMany(panel => panel.Points));
        for (int i = 0; i < count; i++)
        {
            double x = left + (i * (side + between));
            new ScatterPanel(new(x, top, x + side, top + side), range, s)
            {
                HasLeftFigures = i == 0,
                HeadPoints = HeadPoints,
                NoiseDb = request.NoiseDb,
            }.Draw(page.Canvas, request.Panels[i]);
        }

        ScatterKey.Draw(page.Canvas, body.Left, body.Bottom - (KeyPoints * s / 2), s, request.NoiseDb, request.Panels[0].Points);
        return page.ToPng();
    }
}

/// <summary>What a picture of a fit shows: the same readings against several laws.</summary>
/// <param name="Title">Above the panels.</param>
/// <param name="Caption">Below them.</param>
/// <param name="Panels">One for each law, at least one.</param>
public sealed record FitRequest(string Title, string Caption, IReadOnlyList<FitPanel> Panels)
{
    /// <summary>How far a good reading lies from a law that is right, one standard deviation, dB.</summary>
    public required double NoiseDb { get; init; }
}

/// <summary>One law against the readings.</summary>
/// <param name="Title">What law it is.</param>
/// <param name="Figures">How well it does, in a few words.</param>
/// <param name="Points">The readings.</param>
public sealed record FitPanel(string Title, string Figures, IReadOnlyList<FitPoint> Points);

/// <summary>One reading against what a law predicts.</summary>
/// <param name="ReadDbm">The level read, dBm; where nothing was heard, the level below which nothing is.</param>
/// <param name="PredictedDbm">The level predicted, dBm.</param>
/// <param name="IsHeard">Whether there was a level.</param>
/// <param name="LooksBad">Whether the reading looks wrong.</param>
/// <param name="Label">Its name where it is to be written; null where it is not.</param>
public sealed record FitPoint(double ReadDbm, double PredictedDbm, bool IsHeard, bool LooksBad, string? Label = null);
