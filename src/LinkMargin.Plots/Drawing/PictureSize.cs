using System.Globalization;

namespace LinkMargin.Plots.Drawing;

/// <summary>The size of a picture and of its text.</summary>
public sealed record PictureSize
{
    /// <summary>The smallest width and height that leave space for a plan beside the text, points.</summary>
    public const double LeastPoints = 280;

    /// <summary>The largest width and height, pixels.</summary>
    public const int GreatestPixels = 20_000;

    /// <summary>Makes a size.</summary>
    /// <param name="widthPixels">Width, from 280 points to 20 000 pixels.</param>
    /// <param name="heightPixels">Height, from 280 points to 20 000 pixels.</param>
    /// <param name="pixelsPerPoint">Pixels per typographic point, 0.5 to 10; 2.5 is 180 dots per inch.</param>
    public PictureSize(int widthPixels, int heightPixels, double pixelsPerPoint = 2.5)
    {
        if (!(pixelsPerPoint >= 0.5 && pixelsPerPoint <= 10))
        {
            throw new ArgumentOutOfRangeException(
                nameof(pixelsPerPoint), pixelsPerPoint, "Allowed is 0.5 to 10 pixels for a point.");
        }

        WidthPixels = Checked(widthPixels, pixelsPerPoint, nameof(widthPixels));
        HeightPixels = Checked(heightPixels, pixelsPerPoint, nameof(heightPixels));
        PixelsPerPoint = pixelsPerPoint;
    }

    /// <summary>Width, pixels.</summary>
    public int WidthPixels { get; }

    /// <summary>Height, pixels.</summary>
    public int HeightPixels { get; }

    /// <summary>Pixels per typographic point (1/72 inch): the scale of text and lines.</summary>
    public double PixelsPerPoint { get; }

    /// <summary>The nearest allowed height.</summary>
    internal static int NearestAllowed(double pixels, double pixelsPerPoint) =>
        (int)Math.Clamp(Math.Ceiling(pixels), Math.Ceiling(LeastPoints * pixelsPerPoint), GreatestPixels);

    private static int Checked(int pixels, double pixelsPerPoint, string name) =>
        pixels >= LeastPoints * pixelsPerPoint && pixels <= GreatestPixels
            ? pixels
            : throw new ArgumentOutOfRangeException(name, pixels, Allowed(pixelsPerPoint));

    private static string Allowed(double pixelsPerPoint)
    {
        double least = Math.Ceiling(LeastPoints * pixelsPerPoint);
        return string.Create(
            CultureInfo.InvariantCulture, $"Allowed is {least} to {GreatestPixels} pixels at {pixelsPerPoint} pixels for a point.");
    }
}
