namespace LinkMargin.Files.Quantities;

/// <summary>Reads a bit rate in Gbit/s.</summary>
internal static class RateText
{
    private const string Unit = "Gbit/s";

    /// <summary>Reads it, with or without the unit.</summary>
    public static Parsed Parse(string text)
    {
        string trimmed = text.Trim();
        string figure = trimmed.EndsWith(Unit, StringComparison.OrdinalIgnoreCase) ? trimmed[..^Unit.Length].TrimEnd() : trimmed;
        return NumberText.Parse(figure, $"is not a rate; write 48 {Unit}");
    }
}
