using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Maps;
using LinkMargin.Plots.Tests.Maps;
using ScottPlot;
using SkiaSharp;

namespace LinkMargin.Plots.Tests.Drawing;

public class EmbeddedFontsTests
{
    private const string Face = "Roboto Condensed";

    [Fact]
    public void Both_faces_come_out_of_the_program()
    {
        Assert.Equal((Face, false), (EmbeddedFonts.Regular.FamilyName, EmbeddedFonts.Regular.IsBold));
        Assert.Equal((Face, true), (EmbeddedFonts.Bold.FamilyName, EmbeddedFonts.Bold.IsBold));
    }

    // Names a machine may well have, and one it cannot have: the answer is the embedded face all the same.
    [Theory]
    [InlineData("DejaVu Sans")]
    [InlineData("Arial")]
    [InlineData(EmbeddedFonts.Family)]
    [InlineData("No Such Family")]
    public void Whatever_name_is_asked_for_no_font_of_the_machine_answers(string name)
    {
        EmbeddedFontResolver.Install();
        IFontResolver only = Assert.Single(ScottPlot.Fonts.FontResolvers);
        Assert.Same(EmbeddedFonts.Regular, only.CreateTypeface(name, bold: false, italic: false));
        Assert.Same(EmbeddedFonts.Bold, only.CreateTypeface(name, FontWeight.Bold, FontSlant.Italic, FontSpacing.Normal));
        Assert.Equal(Face, ScottPlot.Fonts.GetTypeface(name + " ", bold: true, italic: false).FamilyName);
    }

    [Fact]
    public void A_picture_leaves_the_library_with_the_embedded_faces_only()
    {
        MapPicture.Render(MapPictureTests.Request(0), new PictureSize(400, 350, 1));
        Assert.IsType<EmbeddedFontResolver>(Assert.Single(ScottPlot.Fonts.FontResolvers));
        Assert.Equal(EmbeddedFonts.Family, ScottPlot.Fonts.Default);
    }

    [Theory]
    [InlineData("0123456789\u2212.,±×²≤≥°′″…")]
    [InlineData("AZaz éñøßåŁřž ΑΩαω АЯая")]
    public void The_signs_that_pictures_use_are_in_both_faces(string signs)
    {
        foreach (SKTypeface face in new[] { EmbeddedFonts.Regular, EmbeddedFonts.Bold })
        {
            Assert.All(signs, sign => Assert.True(face.ContainsGlyph(sign), $"'{sign}' is missing."));
        }
    }

    // Columns of figures line up only when all figures are equally wide.
    [Fact]
    public void All_figures_are_equally_wide()
    {
        foreach (SKTypeface face in new[] { EmbeddedFonts.Regular, EmbeddedFonts.Bold })
        {
            using var font = new SKFont(face, 100);
            Assert.Single("0123456789".Select(c => font.MeasureText(c.ToString())).Distinct());
        }
    }
}
