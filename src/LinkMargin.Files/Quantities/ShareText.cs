namespace LinkMargin.Files.Quantities;

/// <summary>Reads a share, written as a bare number or in percent, independent of the machine's culture.</summary>
public static class ShareText
{
    /// <summary>Reads a share within a range.</summary>
    /// <param name="text">The text, such as <c>0.9</c> or <c>90%</c>.</param>
    /// <param name="range">The allowed range.</param>
    public static Parsed Parse(string text, QuantityRange range)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(range);
        string trimmed = text.Trim();
        bool isPercent = trimmed.EndsWith('%');
        Parsed read = NumberText.Parse(isPercent ? trimmed[..^1] : trimmed, "is not a share; write 0.9 or 90%");
        double share = isPercent ? read.Value / 100 : read.Value;
        return read.Fault is { } fault ? Parsed.Wrong($"{fault}; {range} is allowed")
            : range.Contains(share) ? Parsed.Of(share)
            : Parsed.Wrong($"must be {range}; 0.9 means 90 % confidence");
    }
}
