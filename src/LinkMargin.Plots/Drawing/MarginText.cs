using System.Globalization;
using LinkMargin.Engine.Decisions;

namespace LinkMargin.Plots.Drawing;

/// <summary>Decibels as a picture writes them: with a true minus sign.</summary>
internal static class MarginText
{
    public static string Bare(double marginDb)
    {
        double rounded = Math.Round(marginDb, 1, MidpointRounding.AwayFromZero);
        string text = Math.Abs(rounded).ToString("0.#", CultureInfo.InvariantCulture);
        return rounded < 0 ? "\u2212" + text : text;
    }

    /// <summary>A required margin, as it was written.</summary>
    public static string AsWritten(double requiredDb) => requiredDb.ToString("0.#########", CultureInfo.InvariantCulture);

    /// <summary>A margin by the rule of <see cref="ShownMargin"/>, so that pictures and text show the same figure.</summary>
    public static string WithUnit(double marginDb, double requiredDb) => WithSign(ShownMargin.Text(marginDb, requiredDb)) + " dB";

    /// <summary>A figure that text prints, with the sign that pictures use.</summary>
    public static string WithSign(string figure) => figure.Replace('-', '\u2212');
}
