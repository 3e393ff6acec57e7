namespace LinkMargin.Reports.Documents;

/// <summary>The style and the script of a page, which stand in it.</summary>
internal static class ReportAssets
{
    /// <summary>The style; <c>FAMILY</c> stands for the name of the embedded face.</summary>
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
