using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Printing;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Drawing;

/// <summary>Pictures of lines and letters, and fonts with some letters only.</summary>
public sealed class VectorPictureTests
{
    /// <summary>A hole in a drawing stays a hole in SVG, which has no way to say "outside of".</summary>
    [Fact]
    public void What_is_kept_out_of_a_hole_is_kept_out_of_it_in_SVG()
    {
        using var hole = new SKPath();
        hole.AddRect(new SKRect(120, 120, 140, 140));
        using var page = new Page(new PictureSize(800, 800), "", "", isVector: true);
        page.Canvas.Save();
        Clips.Without(page.Canvas, hole);
        using (SKPaint ink = Pen.Fill(Palette.Ink))
        {
            page.Canvas.DrawRect(100, 100, 60, 60, ink);
        }

        page.Canvas.Restore();
        using VectorPicture picture = page.ToVector();
        string svg = picture.ToSvg("a-", "a <hole>");
        Assert.Contains("clip-rule=\"evenodd\"", svg, StringComparison.Ordinal);
        Assert.Contains("<title>a &lt;hole&gt;</title>", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"cl_", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_that_the_face_lacks_is_shown_by_its_number()
    {
        Assert.Equal("abc \u00e9 \u03a9 \u0416", Legible.In(EmbeddedFonts.Regular, "abc \u00e9 \u03a9 \u0416"));
        Assert.Equal("a[U+6E38]b[U+1F3AE]", Legible.In(EmbeddedFonts.Regular, "a\u6e38b\U0001F3AE\ufe0f"));
    }

    /// <summary>Skia, which reads any font, finds the letters that were kept as they were, and none of the others.</summary>
    [Fact]
    public void A_font_with_some_letters_draws_them_as_the_whole_font_does()
    {
        (byte[] regular, byte[] bold) = WebFonts.For("Haus \u00c4\u00e9");
        Assert.InRange(regular.Length, 1_000, EmbeddedFonts.RegularFile.Length / 3);
        Assert.InRange(bold.Length, 1_000, EmbeddedFonts.BoldFile.Length / 3);
        using SKTypeface part = SKTypeface.FromData(SKData.CreateCopy(regular));
        using SKFont some = new(part, 100), whole = new(EmbeddedFonts.Regular, 100);
        foreach (char letter in "Haus\u00c4\u00e9")
        {
            using SKPath kept = some.GetGlyphPath(some.GetGlyph(letter)), original = whole.GetGlyphPath(whole.GetGlyph(letter));
            Assert.Equal(original.ToSvgPathData(), kept.ToSvgPathData());
            Assert.NotEmpty(kept.ToSvgPathData());
        }

        using SKPath other = some.GetGlyphPath(some.GetGlyph('Q'));
        Assert.True(other is null || other.IsEmpty);
        Assert.Equal(whole.MeasureText("Haus"), some.MeasureText("Haus"));
    }
}
