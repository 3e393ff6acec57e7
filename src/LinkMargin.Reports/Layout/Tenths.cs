using System.Globalization;
using LinkMargin.Engine.Decisions;

namespace LinkMargin.Reports.Layout;

/// <summary>
/// Decibels as they are printed: to one decimal, margins rounded down and all else to the nearest. All rounding is done here,
/// so that a figure reads the same in a table, a budget and a sentence, and printed figures add up.
/// </summary>
internal static class Tenths
{
    // A figure this close to a whole tenth is one: far below what is printed, far above what sums of doubles lose.
    private const double Slack = 1e-6;

    /// <summary>The nearest whole number of tenths.</summary>
    public static long Of(double value) => (long)Math.Round(10 * value, MidpointRounding.AwayFromZero);

    /// <summary>A margin in whole tenths, by the rule of <see cref="ShownMargin"/>: rounded down.</summary>
    public static long OfMargin(double marginDb) => ShownMargin.Tenths(marginDb);

    /// <summary>A margin with one decimal, rounded down.</summary>
    public static string ShowMargin(double marginDb) => ShownMargin.Text(marginDb);

    /// <summary>A margin beside the required one: more decimals where one would hide on which side it lies.</summary>
    public static string ShowMargin(double marginDb, double requiredDb) => ShownMargin.Text(marginDb, requiredDb);

    /// <summary>A required margin, as it was written.</summary>
    public static string ShowRequired(double requiredDb) => ShownMargin.RequiredText(requiredDb);

    /// <summary>A figure with one decimal.</summary>
    public static string Show(double value) => Show(Of(value));

    /// <summary>A number of tenths with one decimal.</summary>
    public static string Show(long tenths) => (tenths / 10m).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>The same with its sign, plus included; none for 0.</summary>
    public static string Signed(long tenths) => (tenths > 0 ? "+" : "") + Show(tenths);

    /// <summary>
    /// Each item to a whole number of tenths, less than a tenth away from its value, so that they sum to a total. Items
    /// that are whole tenths stay as they are: somebody will compare them with the table they come from.
    /// </summary>
    /// <param name="items">The items.</param>
    /// <param name="total">Their sum in tenths, rounded to nearest.</param>
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

        // A total rounded down can lie one below items that were taken for whole tenths.
        for (int i = largestFirst.Length - 1; i >= 0 && missing < 0; i--, missing++)
        {
            whole[largestFirst[i]]--;
        }

        return whole;
    }
}

/// <summary>Figures as tables of data show them: as short as they were written.</summary>
internal static class Figures
{
    /// <summary>At most four decimals, none that are zero.</summary>
    public static string Plain(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>A thickness in millimetres; empty if there is none.</summary>
    public static string Millimetres(double? metres) => metres is { } m ? Plain(1000 * m) : "";
}
