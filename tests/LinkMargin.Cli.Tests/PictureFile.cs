using SkiaSharp;

namespace LinkMargin.Cli.Tests;

/// <summary>A picture that a command wrote: what stands where is for the tests of drawing; here, that it is a whole sheet.</summary>
internal static class PictureFile
{
    /// <summary>
    /// Holds a file to being a finished sheet: a title over its upper left, ink in the middle, and a white edge of 16 points (at
    /// least 8 pixels at any resolution) on all four sides but for a figure over the end of an axis.
    /// </summary>
    internal static SKSizeI AssertSheet(string path)
    {
        using SKBitmap bitmap = SKBitmap.Decode(path);
        Assert.NotNull(bitmap);
        (int width, int height) = (bitmap.Width, bitmap.Height);
        SKColor[] pixels = bitmap.Pixels;
        bool IsWhite(int x, int y) => pixels[(y * width) + x] == SKColors.White;
        bool IsDark(int x, int y) => pixels[(y * width) + x] is { Red: < 0x60, Green: < 0x60, Blue: < 0x60 };
        int Count(int left, int top, int right, int bottom, Func<int, int, bool> isIt) =>
            Enumerable.Range(top, bottom - top).Sum(y => Enumerable.Range(left, right - left).Count(x => isIt(x, y)));

        const int Edge = 8;
        Assert.Equal(Edge * width, Count(0, 0, width, Edge, IsWhite));
        Assert.Equal(Edge * width, Count(0, height - Edge, width, height, IsWhite));
        Assert.Equal(Edge * height, Count(0, 0, Edge, height, IsWhite));
        Assert.Equal(Edge * height, Count(width - Edge, 0, width, height, IsWhite));
        Assert.True(Count(0, 0, width / 3, Math.Min(height / 5, 120), IsDark) > 150, "a title");
        int inTheMiddle = width / 4 * 2 * (height / 4 * 2);
        int drawn = inTheMiddle - Count(width / 4, height / 4, (width / 4) + (width / 4 * 2), (height / 4) + (height / 4 * 2), IsWhite);
        Assert.True(drawn > inTheMiddle / 100, $"{drawn} of {inTheMiddle} pixels in the middle");
        return new SKSizeI(width, height);
    }
}
