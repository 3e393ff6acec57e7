using System.Globalization;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Plots.Drawing;

/// <summary>Round lengths in a unit, in metres.</summary>
internal static class LengthTicks
{
    private static readonly double[] RoundSteps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

    public static double MetresPer(LengthUnit unit) => unit == LengthUnit.Foot ? LengthUnits.MetresPerFoot : 1;

    public static string ShortNameOf(LengthUnit unit) => unit == LengthUnit.Foot ? "ft" : "m";

    /// <summary>The smallest round step in the unit that is at least this many metres.</summary>
    public static double StepAtLeast(double metres, LengthUnit unit)
    {
        double wanted = metres / MetresPer(unit);
        return Array.Find(RoundSteps, s => s >= wanted) is double step and > 0 ? step : RoundSteps[^1];
    }

    /// <summary>The largest round length in the unit that is at most this many metres.</summary>
    public static double LengthAtMost(double metres, LengthUnit unit)
    {
        double wanted = metres / MetresPer(unit);
        return Array.FindLast(RoundSteps, s => s <= wanted) is double length and > 0 ? length : RoundSteps[0];
    }

    /// <summary>Positions of ticks between two ends, metres, with their numbers.</summary>
    public static IEnumerable<(double Metres, string Text)> Between(
        double leastMetres, double greatestMetres, double step, LengthUnit unit)
    {
        double metres = step * MetresPer(unit);
        for (double n = Math.Ceiling(leastMetres / metres); n * metres <= greatestMetres; n++)
        {
            yield return (n * metres, Figure(n * step));
        }
    }

    /// <summary>A plain number with a true minus sign.</summary>
    public static string Figure(double value)
    {
        double rounded = Math.Round(value, 2);
        string text = Math.Abs(rounded).ToString("0.##", CultureInfo.InvariantCulture);
        return rounded < 0 ? "\u2212" + text : text;
    }

    /// <summary>A length as written on a plan: metres to the centimetre, or feet and whole inches.</summary>
    public static string Written(double metres, LengthUnit unit)
    {
        if (unit == LengthUnit.Metre)
        {
            return metres.ToString("0.00", CultureInfo.InvariantCulture);
        }

        long inches = (long)Math.Round(metres / LengthUnits.MetresPerFoot * 12);
        return inches % 12 == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{inches / 12}′")
            : string.Create(CultureInfo.InvariantCulture, $"{inches / 12}′ {inches % 12}″");
    }

    /// <summary>The same with its unit.</summary>
    public static string WithUnit(double metres, LengthUnit unit) => Written(metres, unit) + (unit == LengthUnit.Metre ? " m" : "");
}
