using System.Globalization;

namespace LinkMargin.Plots.Drawing;

/// <summary>A margin as a picture writes it: whole decibels with a true minus sign.</summary>
internal static class MarginText
{
    public static string Bare(double marginDb)
    {
        double rounded = Math.Round(marginDb, 1, MidpointRounding.AwayFromZero);
        string text = Math.Abs(rounded).ToString("0.#", CultureInfo.InvariantCulture);
        return rounded < 0 ? "\u2212" + text : text;
    }

    /// <summary>Rounded down to whole decibels, so that a seat that just fails never reads as one that meets.</summary>
    public static string WithUnit(double marginDb) => Bare(Math.Floor(marginDb)) + " dB";
}
