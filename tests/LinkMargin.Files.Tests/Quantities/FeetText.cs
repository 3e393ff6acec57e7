using System.Globalization;
using System.Text.RegularExpressions;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Files.Tests.Quantities;

/// <summary>A house file in metres, written in feet.</summary>
internal static partial class FeetText
{
    /// <summary>The same house: every bare number that is a length, in feet.</summary>
    public static string Of(string metric) => BareLength().Replace(
        metric.Replace("units: m\n", "units: ft\n", StringComparison.Ordinal),
        number => (double.Parse(number.Value, CultureInfo.InvariantCulture) / LengthUnits.MetresPerFoot)
            .ToString("0.############", CultureInfo.InvariantCulture));

    [GeneratedRegex(
        @"(?<=[\[:,]\s*)-?\d+(\.\d+)?(?=\s*([,\]}#]|$))(?<!(used|players|facing|turn|required|margin): .*)",
        RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex BareLength();
}
