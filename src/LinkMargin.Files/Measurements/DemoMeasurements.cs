using LinkMargin.Files.Resources;

namespace LinkMargin.Files.Measurements;

/// <summary>
/// Invented readings of the built-in house, to try <c>fit</c> with: some walls lose more than the tables say, one link was not
/// heard, one was read twice, and one was written down wrong.
/// </summary>
public static class DemoMeasurements
{
    /// <summary>The text of the file.</summary>
    public static string Text { get; } = EmbeddedText.Read("readings/demo-readings.csv");
}
