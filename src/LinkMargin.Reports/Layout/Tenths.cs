using System.Globalization;
using LinkMargin.Engine.Decisions;

namespace LinkMargin.Reports.Layout;

/// <summary>
/// Decibels as printed: to one decimal, margins rounded down and everything else to nearest. All rounding is done here,
/// so that a value is the same in a table, a budget and a sentence, and printed values add up.
/// </summary>
internal static class Tenths
{
    // A value this close to a whole tenth counts as one: far below what is printed, far above the rounding error of sums.
    private const double Slack = 1e-6;

    /// <summary>The nearest whole number of tenths.</summary>
    public static long Of(double value) => (long)Math.Round(10 * value, MidpointRounding.AwayFromZero);

    /// <summary>A margin in whole tenths, rounded down like <see cref="ShownMargin"/>.</summary>
    public static long OfMargin(double marginDb) => ShownMargin.Tenths(marginDb);

    /// <summary>A margin with one decimal, rounded down.</summary>
    public static string ShowMargin(double marginDb) => ShownMargin.Text(marginDb);

    /// <summary>A margin next to the required one: with more decimals if one would hide whether it passes.</summary>
    public static string ShowMargin(double marginDb, double requiredDb) => ShownMargin.Text(marginDb, requiredDb);

    /// <summary>A required margin as written in the house file.</summary>
    public static string ShowRequired(double requiredDb) => ShownMargin.RequiredText(requiredDb);

    /// <summary>A value with one decimal.</summary>
    public static string Show(double value) => Show(Of(value));

    /// <summary>A number of tenths as a value with one decimal.</summary>
    public static string Show(long tenths) => (tenths / 10m).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>The same with its sign, even a plus; none for 0.</summary>
    public static string Signed(long tenths) => (tenths > 0 ? "+" : "") + Show(tenths);

    /// <summary>
    /// Rounds each item to a whole number of tenths, by less than a tenth, so that they sum to a total. Items that are
    /// already whole tenths stay unchanged, since readers will compare them with the table they come from.
    /// </summary>
    /// <param name="items">The items.</param>
    /// <param name="total">Their sum in tenths, rounded down or to nearest.</param>
    public static long[] Apportion(IReadOnlyList<double> items, long total)
    {
        long[] whole = new long[items.Count];
        double[] rest = new double[items.Count];
        for (int i = 0; i < items.Count; i++)
        {
            double tenths = 10 * items[i];
            double nearest = Math.Round(tenths);
            whole[i] = Math.Abs(tenths - nearest) < Slack ? (long)nearest : (long)Math.Floor(tenths);
            rest[i] = Math.Max(0, tenths - whole[i]);
        }

        int[] largestFirst = [.. Enumerable.Range(0, items.Count).OrderByDescending(i => rest[i])];
        long missing = total - whole.Sum();
        for (int i = 0; i < missing && i < largestFirst.Length; i++)
        {
            whole[largestFirst[i]]++;
        }

        // A total that was rounded down can be one less than the sum of items that counted as whole tenths.
        for (int i = largestFirst.Length - 1; i >= 0 && missing < 0; i--, missing++)
        {
            whole[largestFirst[i]]--;
        }

        return whole;
    }
}

/// <summary>Numbers in tables of data: as short as they were written.</summary>
internal static class Figures
{
    /// <summary>At most four decimals, without trailing zeros.</summary>
    public static string Plain(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>A thickness in millimetres; empty if there is none.</summary>
    public static string Millimetres(double? metres) => metres is { } m ? Plain(1000 * m) : "";
}
