using SkiaSharp;

namespace LinkMargin.Plots.Fonts;

/// <summary>
/// The two faces every picture is lettered with. They travel inside the program, so a picture comes out the same on a
/// machine with other fonts, or none.
/// </summary>
internal static class EmbeddedFonts
{
    /// <summary>The name the drawing library asks for; deliberately no real family's, so no system can answer it.</summary>
    public const string Family = "LinkMargin Lettering";

    private static readonly Lazy<SKTypeface> LazyRegular = new(() => Load("RobotoCondensed-Regular.ttf"));
    private static readonly Lazy<SKTypeface> LazyBold = new(() => Load("RobotoCondensed-Bold.ttf"));

    public static SKTypeface Regular => LazyRegular.Value;

    public static SKTypeface Bold => LazyBold.Value;

    private static SKTypeface Load(string resource)
    {
        using Stream stream = typeof(EmbeddedFonts).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The font '{resource}' is missing from the program.");
        using SKData data = SKData.Create(stream);
        return SKTypeface.FromData(data)
            ?? throw new InvalidOperationException($"The font '{resource}' in the program cannot be read.");
    }
}
