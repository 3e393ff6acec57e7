namespace LinkMargin.Reports.Documents;

/// <summary>The style and the script that are embedded in a page.</summary>
internal static class ReportAssets
{
    /// <summary>The style; <c>FAMILY</c> is replaced by the name of the embedded font.</summary>
    public static string Style => Read("report.css");

    /// <summary>The script of the map.</summary>
    public static string Script => Read("explore.js");

    private static string Read(string name)
    {
        using Stream stream = typeof(ReportAssets).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"'{name}' is missing from the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
