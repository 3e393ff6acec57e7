using System.Globalization;

namespace LinkMargin.Files.Quantities;

/// <summary>The allowed range of a number, both ends included. The check and the message both use it.</summary>
/// <param name="Least">Smallest value allowed.</param>
/// <param name="Greatest">Largest value allowed.</param>
/// <param name="Unit">The unit both are in, such as <c>m</c>; empty for a bare number.</param>
public sealed record QuantityRange(double Least, double Greatest, string Unit)
{
    private const double Finest = 0.0001, Largest = 1e9;

    /// <summary>The unit of a range of lengths.</summary>
    private const string Metres = "m";

    /// <summary>Whether it is a range of lengths, which may be shown in feet and inches.</summary>
    public bool IsOfLengths => Unit == Metres;

    /// <summary>Whether a value is allowed; NaN never is.</summary>
    public bool Contains(double value) => value >= Least && value <= Greatest;

    /// <summary>
    /// A value with its unit, to four decimals; in full if rounding would show a value outside the range as inside, and with a power
    /// of ten if rounding would leave only zeros.
    /// </summary>
    public string Show(double value)
    {
        string figure = Math.Abs(value) is 0 or (>= Finest and < Largest)
            ? value.ToString("0.####", CultureInfo.InvariantCulture)
            : value.ToString("0.####e0", CultureInfo.InvariantCulture);
        if (!Contains(value) && Contains(double.Parse(figure, CultureInfo.InvariantCulture)))
        {
            figure = value.ToString("R", CultureInfo.InvariantCulture);
        }

        return $"{figure}{(Unit.Length == 0 ? "" : " ")}{Unit}";
    }

    /// <summary><c>0.5 m to 20 m</c>.</summary>
    public override string ToString() => $"{Show(Least)} to {Show(Greatest)}";
}
