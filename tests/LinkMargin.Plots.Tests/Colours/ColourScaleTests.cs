using LinkMargin.Plots.Colours;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Colours;

public class ColourScaleTests
{
    private const int Steps = 60;

    // A dozen tones is what a map of 60 dB in steps of 5 dB has.
    private const int Tones = 12;

    [Fact]
    public void Lightness_only_rises() =>
        Assert.All(Pairs(Exact(Steps)), p => Assert.True(p.To.L > p.From.L + (0.3 / Steps)));

    [Fact]
    public void Equal_steps_are_equally_large_to_the_eye()
    {
        double[] sizes = [.. Pairs(Exact(Steps)).Select(p => p.From.DistanceTo(p.To))];
        Assert.True(sizes.Max() / sizes.Min() < 1.05, $"{sizes.Min()} to {sizes.Max()}");
    }

    [Fact]
    public void A_screen_can_show_all_of_it() =>
        Assert.All(
            Exact(Steps).Select(c => c.ToLinear()),
            c => Assert.True(Math.Min(c.Red, Math.Min(c.Green, c.Blue)) >= 0 && Math.Max(c.Red, Math.Max(c.Green, c.Blue)) <= 1));

    // 0.02 in OKLab is about what one just tells apart side by side (common practice); a tone must be well above.
    [Fact]
    public void Neighbouring_tones_are_reported_apart_with_every_kind_of_red_and_green_vision()
    {
        foreach (ColourVision vision in ColourVision.All)
        {
            Oklab[] seen = [.. Exact(Tones - 1).Select(vision.Seen)];
            Assert.All(Pairs(seen), p => Assert.True(p.From.DistanceTo(p.To) > 0.04));
            Assert.All(Pairs(seen), p => Assert.True(p.To.L > p.From.L + 0.02));
        }
    }

    // The other way round: tones far apart on the scale never look alike.
    [Fact]
    public void No_two_tones_are_confused_with_any_kind_of_red_and_green_vision()
    {
        foreach (ColourVision vision in ColourVision.All)
        {
            Oklab[] seen = [.. Exact(Tones - 1).Select(vision.Seen)];
            double nearest = Pairs(seen).Min(p => p.From.DistanceTo(p.To));
            for (int i = 0; i < seen.Length; i++)
            {
                for (int j = i + 2; j < seen.Length; j++)
                {
                    Assert.True(seen[i].DistanceTo(seen[j]) > 1.5 * nearest);
                }
            }
        }
    }

    [Fact]
    public void A_grey_printer_keeps_the_order()
    {
        double[] greys = [.. Enumerable.Range(0, Tones).Select(i => Luma(ColourScale.At(i / (Tones - 1.0))))];
        Assert.All(Enumerable.Range(1, Tones - 1), i => Assert.True(greys[i] > greys[i - 1] + 8));
    }

    [Fact]
    public void Beyond_the_ends_the_ends_hold()
    {
        Assert.Equal(ColourScale.At(0), ColourScale.At(-3));
        Assert.Equal(ColourScale.At(1), ColourScale.At(7));
    }

    [Fact]
    public void Colours_go_to_OKLab_and_back()
    {
        SKColor[] colours = [SKColors.White, SKColors.Black, SKColors.SteelBlue, SKColors.Tomato, new SKColor(1, 2, 3)];
        foreach (SKColor colour in colours)
        {
            Assert.Equal(colour, Oklab.FromColour(colour).ToColour());
        }
    }

    // Table of XYZ and OKLab pairs in B. Ottosson, "A perceptual color space for image processing" (2020): white D65 is
    // L 1.000, a 0.000, b 0.000.
    [Fact]
    public void White_is_one_without_hue()
    {
        Oklab white = Oklab.FromColour(SKColors.White);
        Assert.Equal(1, white.L, 0.0005);
        Assert.Equal(0, white.A, 0.0005);
        Assert.Equal(0, white.B, 0.0005);
    }

    // Recommendation ITU-R BT.709.
    private static double Luma(SKColor c) => (0.2126 * c.Red) + (0.7152 * c.Green) + (0.0722 * c.Blue);

    private static Oklab[] Exact(int steps) =>
        [.. Enumerable.Range(0, steps + 1).Select(i => ColourScale.ExactAt((double)i / steps))];

    private static IEnumerable<(Oklab From, Oklab To)> Pairs(Oklab[] colours) => colours.Zip(colours.Skip(1));
}
