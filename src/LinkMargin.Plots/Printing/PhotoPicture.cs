using SkiaSharp;

namespace LinkMargin.Plots.Printing;

/// <summary>The user's own picture, such as a logo: a PNG or a JPEG.</summary>
public sealed class PhotoPicture : IDisposable
{
    /// <summary>The largest file that is read, bytes.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    /// <summary>The largest width and height, pixels.</summary>
    public const int MostPixels = 4000;

    private PhotoPicture(SKImage image, byte[] bytes, string mediaType) => (Image, Bytes, MediaType) = (image, bytes, mediaType);

    /// <summary>The file as given.</summary>
    public IReadOnlyList<byte> Bytes { get; }

    /// <summary><c>image/png</c> or <c>image/jpeg</c>.</summary>
    public string MediaType { get; }

    /// <summary>Width over height.</summary>
    public double Aspect => (double)Image.Width / Image.Height;

    internal SKImage Image { get; }

    /// <summary>Reads a picture.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="fault">What is wrong with it and what to do; null if nothing is.</param>
    public static PhotoPicture? Read(byte[] bytes, out string? fault)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        using var data = SKData.CreateCopy(bytes);
        using SKCodec? codec = bytes.Length == 0 ? null : SKCodec.Create(data);
        string? type = codec?.EncodedFormat switch
        {
            SKEncodedImageFormat.Png => "image/png",
            SKEncodedImageFormat.Jpeg => "image/jpeg",
            _ => null,
        };
        fault = type is null ? "this is not a PNG or JPEG; name a picture of one of these kinds"
            : codec!.Info.Width > MostPixels || codec.Info.Height > MostPixels
                ? FormattableString.Invariant($"this picture is {codec.Info.Width} by {codec.Info.Height} pixels; make it at most {MostPixels} wide and high")
            : null;
        if (fault is not null)
        {
            return null;
        }

        using SKBitmap? pixels = SKBitmap.Decode(codec);
        if (pixels is null)
        {
            fault = "this picture is damaged and cannot be read; save it again";
            return null;
        }

        return new PhotoPicture(SKImage.FromBitmap(pixels), bytes, type!);
    }

    /// <inheritdoc/>
    public void Dispose() => Image.Dispose();
}
