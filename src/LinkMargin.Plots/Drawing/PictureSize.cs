using System.Globalization;

namespace LinkMargin.Plots.Drawing;

/// <summary>How large a picture is, and how large its lettering is drawn.</summary>
public sealed record PictureSize
{
    /// <summary>The smallest width and height that leave room for a plan beside its lettering, points.</summary>
    public const double LeastPoints = 280;

    /// <summary>The largest width and height, pixels.</summary>
    public const int GreatestPixels = 20_000;

    /// <summary>Makes a size.</summary>
    /// <param name="widthPixels">Width, from 280 points to 20 000 pixels.</param>
    /// <param name="heightPixels">Height, from 280 points to 20 000 pixels.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point, 0.5 to 10; 2.5 is 180 dots an inch.</param>
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

    /// <summary>Pixels for a typographic point (1/72 inch): the scale of lettering and lines.</summary>
    public double PixelsPerPoint { get; }

    /// <summary>The nearest height that is allowed.</summary>
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
