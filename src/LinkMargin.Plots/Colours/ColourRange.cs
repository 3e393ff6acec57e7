using LinkMargin.Engine.Fields;

namespace LinkMargin.Plots.Colours;

/// <summary>The margins at the two ends of the colour scale. Maps shown side by side share one.</summary>
/// <param name="LeastDb">At the dark end, dB; lower margins have the same colour.</param>
/// <param name="GreatestDb">At the light end, dB, above <paramref name="LeastDb"/>.</param>
public sealed record ColourRange(double LeastDb, double GreatestDb)
{
    // A map's scale ends on whole steps of this many dB; a few cells beside the console must not stretch it.
    private const double WholeStepDb = 5;
    private const double ShareNotDrawn = 0.01;

    /// <summary>
    /// The range for several fields together, in whole steps of 5 dB: all but the outermost hundredth of their cells at
    /// each end, and the required margin with 10 dB on either side.
    /// </summary>
    public static ColourRange Covering(IEnumerable<Field> fields, double requiredDb)
    {
        double[] margins = [.. fields.SelectMany(f => f.MarginDb).Where(double.IsFinite).Order()];
        double least = requiredDb - (2 * WholeStepDb), greatest = requiredDb + (2 * WholeStepDb);
        if (margins.Length > 0)
        {
            int skip = (int)(ShareNotDrawn * margins.Length);
            least = Math.Min(least, margins[skip]);
            greatest = Math.Max(greatest, margins[margins.Length - 1 - skip]);
        }

        return new(WholeStepDb * Math.Floor(least / WholeStepDb), WholeStepDb * Math.Ceiling(greatest / WholeStepDb));
    }
}
