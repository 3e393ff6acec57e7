using SkiaSharp;

namespace LinkMargin.Plots.Colours;

/// <summary>
/// A colour in OKLab, where equal distances look about equally different (B. Ottosson, "A perceptual color space for
/// image processing", 2020; matrices of its 2021 revision). sRGB transfer function: IEC 61966-2-1.
/// </summary>
/// <param name="L">Lightness, 0 black to 1 white.</param>
/// <param name="A">Green (below 0) to red.</param>
/// <param name="B">Blue (below 0) to yellow.</param>
internal readonly record struct Oklab(double L, double A, double B)
{
    /// <summary>From lightness, chroma and hue in degrees.</summary>
    public static Oklab FromLch(double lightness, double chroma, double hueDegrees)
    {
        double hue = hueDegrees * Math.PI / 180;
        return new(lightness, chroma * Math.Cos(hue), chroma * Math.Sin(hue));
    }

    public static Oklab FromColour(SKColor colour) =>
        FromLinear(Linear(colour.Red), Linear(colour.Green), Linear(colour.Blue));

    public static Oklab FromLinear(double red, double green, double blue)
    {
        double l = Math.Cbrt((0.4122214708 * red) + (0.5363325363 * green) + (0.0514459929 * blue));
        double m = Math.Cbrt((0.2119034982 * red) + (0.6806995451 * green) + (0.1073969566 * blue));
        double s = Math.Cbrt((0.0883024619 * red) + (0.2817188376 * green) + (0.6299787005 * blue));
        return new(
            (0.2104542553 * l) + (0.7936177850 * m) - (0.0040720468 * s),
            (1.9779984951 * l) - (2.4285922050 * m) + (0.4505937099 * s),
            (0.0259040371 * l) + (0.7827717662 * m) - (0.8086757660 * s));
    }

    public double DistanceTo(Oklab other)
    {
        double dl = L - other.L, da = A - other.A, db = B - other.B;
        return Math.Sqrt((dl * dl) + (da * da) + (db * db));
    }

    public Oklab Towards(Oklab other, double t) =>
        new(L + (t * (other.L - L)), A + (t * (other.A - A)), B + (t * (other.B - B)));

    /// <summary>Linear red, green and blue; outside 0..1 for a colour that a screen cannot show.</summary>
    public (double Red, double Green, double Blue) ToLinear()
    {
        double l = Cube(L + (0.3963377774 * A) + (0.2158037573 * B));
        double m = Cube(L - (0.1055613458 * A) - (0.0638541728 * B));
        double s = Cube(L - (0.0894841775 * A) - (1.2914855480 * B));
        return (
            (4.0767416621 * l) - (3.3077115913 * m) + (0.2309699292 * s),
            (-1.2684380046 * l) + (2.6097574011 * m) - (0.3413193965 * s),
            (-0.0041960863 * l) - (0.7034186147 * m) + (1.7076147010 * s));
    }

    public SKColor ToColour()
    {
        (double red, double green, double blue) = ToLinear();
        return new(Encoded(red), Encoded(green), Encoded(blue));
    }

    internal static double Linear(byte encoded)
    {
        double v = encoded / 255.0;
        return v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);
    }

    private static byte Encoded(double linear)
    {
        double v = Math.Clamp(linear, 0, 1);
        double encoded = v <= 0.0031308 ? 12.92 * v : (1.055 * Math.Pow(v, 1 / 2.4)) - 0.055;
        return (byte)Math.Round(255 * encoded);
    }

    private static double Cube(double v) => v * v * v;
}
