using System.Globalization;

namespace LinkMargin.Engine.Decisions;

/// <summary>
/// How a margin is shown, in text and in pictures: rounded down to 0.1 dB, so that a seat that does not pass never looks like one
/// that does. Beside a required margin with more decimals it gets enough decimals to show which of the two is greater.
/// </summary>
public static class ShownMargin
{
    private const int MostDecimals = 9;

    /// <summary>The greatest whole number of tenths of a decibel that is not above a margin.</summary>
    public static long Tenths(double marginDb) => Parts(marginDb, 10);

    /// <summary>Margin minus the required margin, tenths of a decibel, rounded down: below 0 exactly where the seat does not pass.</summary>
    public static long HeadroomTenths(double marginDb, double requiredDb) => IsWholeTenths(requiredDb)
        ? Tenths(marginDb) - Tenths(requiredDb)
        : Tenths(marginDb - requiredDb);

    /// <summary>A margin with one decimal.</summary>
    public static string Text(double marginDb) => (Tenths(marginDb) / 10m).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>A margin as it is shown beside the required one.</summary>
    public static string Text(double marginDb, double requiredDb)
    {
        string text = Text(marginDb);
        for (int decimals = 2; decimals <= MostDecimals && Hides(text); decimals++)
        {
            double parts = Math.Pow(10, decimals);
            text = (Parts(marginDb, parts) / parts).ToString($"F{decimals}", CultureInfo.InvariantCulture);
        }

        return text;

        bool Hides(string shown) => double.Parse(shown, CultureInfo.InvariantCulture) < requiredDb != marginDb < requiredDb;
    }

    /// <summary>A required margin: as it was written, with at least one decimal.</summary>
    public static string RequiredText(double requiredDb) => requiredDb.ToString("0.0########", CultureInfo.InvariantCulture);

    private static bool IsWholeTenths(double requiredDb) => Tenths(requiredDb) / 10.0 == requiredDb;

    private static long Parts(double marginDb, double ofDecibel)
    {
        long parts = (long)Math.Floor(ofDecibel * marginDb);

        // The product is itself rounded, so a neighbour may be the right one.
        return parts / ofDecibel > marginDb ? parts - 1 : (parts + 1) / ofDecibel <= marginDb ? parts + 1 : parts;
    }
}
