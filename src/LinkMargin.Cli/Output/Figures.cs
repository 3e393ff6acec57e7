using System.Globalization;

namespace LinkMargin.Cli.Output;

/// <summary>Figures as tables of data show them: as short as they were written.</summary>
internal static class Figures
{
    /// <summary>At most four decimals, none that are zero.</summary>
    public static string Plain(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>A thickness in millimetres; empty where there is none.</summary>
    public static string Millimetres(double? metres) => metres is { } m ? Plain(1000 * m) : "";
}
