using LinkMargin.Plots.Charts;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Charts;

/// <summary>Where a picture of a fit has its marks, and of which shape.</summary>
public sealed class FitInkTests
{
    // A point of 2 pixels: a disc of 3.2 points is 13 pixels wide.
    private const double PixelsPerPoint = 2;

    [Fact]
    public void A_measurement_stands_at_its_levels_off_the_diagonal()
    {
        // Measured −60 where −75 was predicted: both axes run over the whole tens about them, −80 to −50 dBm.
        (Pixels picture, SKRectI frame) = Render(new FitPoint(-60, -75, true, false));
        SKRectI mark = Assert.Single(Discs(picture, frame));
        Assert.InRange(mark.MidX - X(frame, -75, -80, -50), -2, 2);
        Assert.InRange(mark.MidY - Y(frame, -60, -80, -50), -2, 2);
    }

    [Fact]
    public void A_measurement_that_looks_wrong_is_a_ring_in_the_strong_colour_and_one_not_heard_a_wedge()
    {
        (Pixels wrong, SKRectI frame) = Render(new FitPoint(-60, -75, true, true));
        int x = X(frame, -75, -80, -50), y = Y(frame, -60, -80, -50);
        Assert.Empty(Discs(wrong, frame));
        SKRectI ring = Pixels.BoxOf(wrong.Where(frame, c => c == Palette.Spot));
        Assert.InRange(ring.MidX - x, -2, 2);
        Assert.InRange(ring.MidY - y, -2, 2);

        // Hollow: 6.4 pixels from the middle to the middle of a line 3.2 pixels wide.
        Assert.Equal(1, wrong.Share(Pixels.About(new(x, y), 2), Palette.Paper));

        (Pixels deaf, _) = Render(new FitPoint(-60, -75, false, false));
        Assert.Empty(deaf.Where(frame, c => c == Palette.Spot));
        SKRectI about = Pixels.About(new(x, y), 12);
        SKRectI wedge = Pixels.BoxOf(deaf.Where(about, Pixels.IsDark));
        int DarkIn(int row) => deaf.Where(new SKRectI(about.Left, row, about.Right, row + 1), Pixels.IsDark).Count();
        Assert.InRange(Enumerable.Range(wedge.Top, 3).Max(DarkIn), 12, 18); // broad on top
        Assert.InRange(Enumerable.Range(wedge.Bottom - 3, 3).Max(DarkIn), 1, 6); // pointed below
    }

    [Fact]
    public void Without_a_measurement_there_is_the_diagonal_alone()
    {
        (Pixels picture, SKRectI frame) = Render();
        Assert.Empty(Discs(picture, frame));
        Assert.Empty(picture.Where(frame, c => c == Palette.Spot));

        // Measured as predicted: on the diagonal from corner to corner, in a band of 5 dB to each side over axes of 70 dB, the tens
        // about −90 to −40 dBm: 1 − (1 − 5/70)² of the frame, less the diagonal itself.
        for (double share = 0.1; share < 0.95; share += 0.1)
        {
            var at = new SKPointI((int)(frame.Left + (share * frame.Width)), (int)(frame.Bottom - (share * frame.Height)));
            Assert.NotEmpty(picture.Where(Pixels.About(at, 2), Pixels.IsDark));
        }

        Assert.InRange(picture.Share(frame, FitChart.BandColour), 0.115, 0.138);
    }

    [Fact]
    public void A_measurement_far_out_and_its_long_label_stay_inside_the_frame()
    {
        (Pixels picture, SKRectI frame) = Render(
            new FitPoint(-300, 20, true, true, "a name that is far too long for the room there is beside the mark"));
        SKRectI mark = Pixels.BoxOf(picture.Where(frame, c => c == Palette.Spot));

        // The axes run from −310 to 30 dBm.
        Assert.InRange(mark.MidX - X(frame, 20, -310, 30), -2, 2);
        Assert.InRange(mark.MidY - Y(frame, -300, -310, 30), -2, 2);

        // Beside the frame there is paper, but for the letters of the axis on the left.
        var beside = new SKRectI(frame.Right + 3, frame.Top, picture.Width, frame.Bottom);
        Assert.Equal(1, picture.Share(beside, Palette.Paper));
    }

    // Discs of ink 6.4 points wide; the diagonal is one patch that is far larger, letters and frame are thinner.
    private static IReadOnlyList<SKRectI> Discs(Pixels picture, SKRectI frame) =>
        [.. picture.Patches(frame, c => c == Palette.Ink, 40).Where(patch => patch.Width is > 6 and < 16 && patch.Height is > 6 and < 16)];

    private static int X(SKRectI frame, double dbm, double least, double greatest) =>
        (int)Math.Round(frame.Left + ((dbm - least) / (greatest - least) * frame.Width));

    private static int Y(SKRectI frame, double dbm, double least, double greatest) =>
        (int)Math.Round(frame.Bottom - ((dbm - least) / (greatest - least) * frame.Height));

    private static (Pixels Picture, SKRectI Frame) Render(params FitPoint[] points)
    {
        var request = new FitRequest("title", "caption", [new FitPanel("law", "rms", points)]) { NoiseDb = 5 };
        var picture = new Pixels(FitPicture.Render(request, FitPicture.FittingSize(request, PixelsPerPoint)));
        return (picture, picture.Ground());
    }
}
