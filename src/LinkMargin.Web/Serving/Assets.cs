using System.Collections.Frozen;
using System.Reflection;
using LinkMargin.Plots.Drawing;
using Microsoft.AspNetCore.Http;

namespace LinkMargin.Web.Serving;

/// <summary>The files of the page, which are part of the program.</summary>
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

    // The faces of the pictures; the page's style names them.
    private static readonly Dictionary<string, Func<byte[]>> Faces = new(StringComparer.Ordinal)
    {
        ["regular.ttf"] = () => EmbeddedFonts.RegularFile,
        ["bold.ttf"] = () => EmbeddedFonts.BoldFile,
    };

    private static readonly Assembly Program = typeof(Assets).Assembly;

    // By name, so that no path can lead anywhere else.
    private static readonly FrozenSet<string> Names = Texts.Concat(Faces.Keys).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>All that are text.</summary>
    public static IEnumerable<string> Texts =>
        Program.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)).Select(name => name[Prefix.Length..]);

    /// <summary>Answers with a file; null name for the page itself.</summary>
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
        // While the page is being worked on: the files as they are in the source, without building anything. No published program does this.
        if (Environment.GetEnvironmentVariable("LINKMARGIN_PAGE_SOURCE") is { Length: > 0 } folder)
        {
            return File.OpenRead(Path.Combine(folder, name));
        }
#endif
        return Program.GetManifestResourceStream(Prefix + name)!;
    }
}
