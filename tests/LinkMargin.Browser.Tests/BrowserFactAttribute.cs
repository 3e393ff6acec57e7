namespace LinkMargin.Browser.Tests;

/// <summary>A test that drives a browser. Without one it is skipped, and says so; where a browser is required it fails instead.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = Chromium.Path is null && !Chromium.IsRequired
        ? $"No Chromium was found, so the page is not tested in a browser. Install it from your distribution's packages, or name its program in {Chromium.PathVariable}."
        : null;
}

/// <summary>The browser that tests drive.</summary>
internal static class Chromium
{
    public const string PathVariable = "LINKMARGIN_CHROMIUM";
    public const string RequiredVariable = "LINKMARGIN_BROWSER_REQUIRED";

    private static readonly string[] Usual = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/lib/chromium/chromium"];

    /// <summary>Its program; null where there is none. A program that is named and is not there is no reason to take another.</summary>
    public static string? Path { get; } = Environment.GetEnvironmentVariable(PathVariable) is { Length: > 0 } named
        ? File.Exists(named) ? named : null
        : Usual.FirstOrDefault(File.Exists);

    public static bool IsRequired { get; } = Environment.GetEnvironmentVariable(RequiredVariable) == "1";
}
