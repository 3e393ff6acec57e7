namespace LinkMargin.Plots;

/// <summary>How large a picture is, and how large its lettering is drawn.</summary>
public sealed record PictureSize
{
    /// <summary>The smallest width and height that leave room for a plan and its lettering, pixels.</summary>
    public const int LeastPixels = 300;

    /// <summary>The largest width and height, pixels.</summary>
    public const int GreatestPixels = 20_000;

    /// <summary>Makes a size.</summary>
    /// <param name="widthPixels">Width, 300 to 20 000 pixels.</param>
    /// <param name="heightPixels">Height, 300 to 20 000 pixels.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point, 0.5 to 10; 2.5 is 180 dots an inch.</param>
    public PictureSize(int widthPixels, int heightPixels, double pixelsPerPoint = 2.5)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(widthPixels, LeastPixels);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(widthPixels, GreatestPixels);
        ArgumentOutOfRangeException.ThrowIfLessThan(heightPixels, LeastPixels);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(heightPixels, GreatestPixels);
        if (!(pixelsPerPoint >= 0.5 && pixelsPerPoint <= 10))
        {
            throw new ArgumentOutOfRangeException(nameof(pixelsPerPoint), pixelsPerPoint, "Allowed is 0.5 to 10 pixels for a point.");
        }

        (WidthPixels, HeightPixels, PixelsPerPoint) = (widthPixels, heightPixels, pixelsPerPoint);
    }

    /// <summary>Width, pixels.</summary>
    public int WidthPixels { get; }

    /// <summary>Height, pixels.</summary>
    public int HeightPixels { get; }

    /// <summary>Pixels for a typographic point (1/72 inch): the scale of lettering and lines.</summary>
    public double PixelsPerPoint { get; }
}
