using System.Collections.Frozen;
using System.Reflection;
using LinkMargin.Plots.Drawing;
using Microsoft.AspNetCore.Http;

namespace LinkMargin.Web.Serving;

/// <summary>The files of the page, embedded in the program.</summary>
internal static class Assets
{
    private const string Prefix = "page/";
    private const string FirstPage = "index.html";

    private static readonly Dictionary<string, string> Types = new(StringComparer.Ordinal)
    {
        [".html"] = "text/html; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
        [".ttf"] = "font/ttf",
    };

    // The fonts of the pictures; the page's style sheet names them.
    private static readonly Dictionary<string, Func<byte[]>> Faces = new(StringComparer.Ordinal)
    {
        ["regular.ttf"] = () => EmbeddedFonts.RegularFile,
        ["bold.ttf"] = () => EmbeddedFonts.BoldFile,
    };

    private static readonly Assembly Program = typeof(Assets).Assembly;

    // Only known names are served, so no path can lead anywhere else.
    private static readonly FrozenSet<string> Names = Texts.Concat(Faces.Keys).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>The names of all text files.</summary>
    public static IEnumerable<string> Texts =>
        Program.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)).Select(name => name[Prefix.Length..]);

    /// <summary>Answers with a file; the page itself if the name is null.</summary>
    public static async Task Write(HttpResponse response, string? name)
    {
        string asked = string.IsNullOrEmpty(name) ? FirstPage : name;
        if (!Names.Contains(asked) || !Types.TryGetValue(Path.GetExtension(asked), out string? type))
        {
            await Refusal.Write(response, StatusCodes.Status404NotFound, "There is no such page.");
            return;
        }

        using Stream content = Open(asked);
        response.ContentType = type;
        response.ContentLength = content.Length;
        await content.CopyToAsync(response.Body, response.HttpContext.RequestAborted);
    }

    private static Stream Open(string name)
    {
        if (Faces.TryGetValue(name, out Func<byte[]>? face))
        {
            return new MemoryStream(face());
        }

#if DEBUG
        // For work on the page: serves the source files without a build. Not part of a published program.
        if (Environment.GetEnvironmentVariable("LINKMARGIN_PAGE_SOURCE") is { Length: > 0 } folder)
        {
            return File.OpenRead(Path.Combine(folder, name));
        }
#endif
        return Program.GetManifestResourceStream(Prefix + name)!;
    }
}
