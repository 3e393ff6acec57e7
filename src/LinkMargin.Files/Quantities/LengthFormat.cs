using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Files.Quantities;

/// <summary>
/// How lengths, places and areas are shown to the person who wrote the house: in metres, or only in feet and inches. All
/// tables, sentences and messages use it; JSON, CSV and GeoJSON are always metric.
/// </summary>
/// <param name="unit">The unit of the house file's bare numbers.</param>
public sealed class LengthFormat(LengthUnit unit)
{
    private const double SquareMetresPerSquareFoot = LengthUnits.MetresPerFoot * LengthUnits.MetresPerFoot;

    // The finest division of a tape measure; 1.6 mm is finer than any input of the model is known.
    private const int PartsOfAnInch = 16;
    private const int PartsOfAFoot = 12 * PartsOfAnInch;

    /// <summary>Metres, the default of a file without units.</summary>
    public static LengthFormat Metric { get; } = new(LengthUnit.Metre);

    /// <summary>Whether the house is written in feet or inches.</summary>
    public bool InFeet { get; } = unit is LengthUnit.Foot or LengthUnit.Inch;

    /// <summary>An example of a length, for a message.</summary>
    public string Example => InFeet ? "4ft" : "1.2 m";

    /// <summary>The unit of areas.</summary>
    public string AreaUnit => InFeet ? "sq ft" : "m2";

    /// <summary>A length in a result: to a centimetre, or to an inch.</summary>
    public string Brief(double metres) => InFeet
        ? FeetAndInches(metres)
        : metres.ToString("0.00", CultureInfo.InvariantCulture) + " m";

    /// <summary>An area in <see cref="AreaUnit"/>, in a result: to a tenth of a square metre, or to a square foot.</summary>
    public string Area(double squareMetres) => InFeet
        ? (squareMetres / SquareMetresPerSquareFoot).ToString("0", CultureInfo.InvariantCulture)
        : squareMetres.ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>
    /// A length in a message about a file: to a millimetre, or to a sixteenth of an inch; in the notation of a house file.
    /// </summary>
    public string Exact(double metres) => InFeet ? Nearest(metres) : $"{Number(metres)} m";

    /// <summary>A short length in a message about a file: to a tenth of a millimetre, or to a sixteenth of an inch.</summary>
    public string Fine(double metres) => InFeet
        ? Nearest(metres)
        : FormattableString.Invariant($"{metres * 1000:0.#} mm");

    /// <summary>An area in a message about a file, with its unit.</summary>
    public string ExactArea(double squareMetres) => InFeet
        ? FormattableString.Invariant($"{squareMetres / SquareMetresPerSquareFoot:0.##} sq ft")
        : FormattableString.Invariant($"{squareMetres:0.##} m²");

    /// <summary>From one length to another, in a message about a file.</summary>
    public string Range(double fromMetres, double toMetres) => InFeet
        ? $"{Exact(fromMetres)} to {Exact(toMetres)}"
        : $"{Number(fromMetres)} to {Number(toMetres)} m";

    /// <summary>A place on the plan, in a message about a file.</summary>
    public string Place(Point2 place) => InFeet
        ? $"({Exact(place.X)}, {Exact(place.Y)})"
        : $"({Number(place.X)}, {Number(place.Y)})";

    /// <summary>The extent of a plan, in a message about a file.</summary>
    public string Extent(Point2 least, Point2 greatest) => Extent(least, greatest, "x", "y");

    /// <summary>The same where the two coordinates have other names.</summary>
    public string Extent(Point2 least, Point2 greatest, string east, string north) =>
        $"{east} from {Range(least.X, greatest.X)}, {north} from {Range(least.Y, greatest.Y)}";

    /// <summary>
    /// The allowed range of a quantity. Feet and inches are rounded inwards, so that every value shown as allowed is allowed. A range
    /// of anything but lengths is not converted.
    /// </summary>
    public string Allowed(QuantityRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return InFeet && range.IsOfLengths
            ? $"{Parts(range.Least, Math.Ceiling)} to {Parts(range.Greatest, Math.Floor)}"
            : range.ToString();
    }

    /// <summary>A value in the same notation as the allowed range.</summary>
    public string Show(QuantityRange range, double value)
    {
        ArgumentNullException.ThrowIfNull(range);
        return InFeet && range.IsOfLengths ? Nearest(value) : range.Show(value);
    }

    // Adding zero turns a rounded minus zero into zero.
    private static string Number(double value) => FormattableString.Invariant($"{Math.Round(value, 3) + 0.0:0.###}");

    // Rounds to whole inches first, so that the inches after the feet are never twelve.
    private static string FeetAndInches(double metres)
    {
        long inches = (long)Math.Round(Math.Abs(metres) / LengthUnits.MetresPerInch, MidpointRounding.AwayFromZero);
        string sign = metres < 0 && inches > 0 ? "-" : "";
        return string.Create(CultureInfo.InvariantCulture, $"{sign}{inches / 12}ft {inches % 12}in");
    }

    // A length below half a part is not shown as zero.
    private static string Nearest(double metres)
    {
        double inches = metres / LengthUnits.MetresPerInch;
        return metres != 0 && Math.Round(inches * PartsOfAnInch) == 0
            ? $"{inches.ToString(Math.Abs(inches) < 0.0001 ? "0.####e0" : "0.####", CultureInfo.InvariantCulture)}in"
            : Parts(metres, Math.Round);
    }

    private static string Parts(double metres, Func<double, double> round)
    {
        double parts = round(metres / LengthUnits.MetresPerInch * PartsOfAnInch);
        // Larger than any house, and too large for a whole number of parts.
        if (Math.Abs(parts) > long.MaxValue / 2)
        {
            return FormattableString.Invariant($"{metres / LengthUnits.MetresPerFoot:0.###e+0}ft");
        }

        long all = (long)Math.Abs(parts);
        (long feet, long rest) = (all / PartsOfAFoot, all % PartsOfAFoot);
        (long inches, long above) = (rest / PartsOfAnInch, rest % PartsOfAnInch);
        string fraction = Fraction(above);
        string inch = (inches, fraction) switch
        {
            (0, "") => feet > 0 ? "" : "0in",
            (0, _) => $"{fraction}in",
            (_, "") => FormattableString.Invariant($"{inches}in"),
            _ => FormattableString.Invariant($"{inches} {fraction}in"),
        };
        string foot = feet > 0 ? FormattableString.Invariant($"{feet}ft") : "";
        return (parts < 0 ? "-" : "") + string.Join(' ', new[] { foot, inch }.Where(text => text.Length > 0));
    }

    private static string Fraction(long above)
    {
        if (above == 0)
        {
            return "";
        }

        long below = PartsOfAnInch;
        for (; above % 2 == 0; above /= 2)
        {
            below /= 2;
        }

        return FormattableString.Invariant($"{above}/{below}");
    }
}
