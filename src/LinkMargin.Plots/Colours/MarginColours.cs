using SkiaSharp;

namespace LinkMargin.Plots.Colours;

/// <summary>The colour of a margin on one map: one tone from each line of equal margin to the next.</summary>
internal sealed class MarginColours(ColourRange range, double stepDb)
{
    public ColourRange Range { get; } = range;

    /// <summary>Step between tones, dB.</summary>
    public double StepDb { get; } = stepDb;

    public SKColor Of(double marginDb)
    {
        double clamped = Math.Clamp(marginDb, Range.LeastDb, Math.BitDecrement(Range.GreatestDb));
        double bottom = StepDb * Math.Floor(clamped / StepDb);
        double middle = (Math.Max(bottom, Range.LeastDb) + Math.Min(bottom + StepDb, Range.GreatestDb)) / 2;
        return ColourScale.At((middle - Range.LeastDb) / (Range.GreatestDb - Range.LeastDb));
    }

    /// <summary>Margins of the lines inside the range, lowest first.</summary>
    public IEnumerable<double> Lines()
    {
        for (double step = Math.Floor(Range.LeastDb / StepDb) + 1; step * StepDb < Range.GreatestDb; step++)
        {
            yield return step * StepDb;
        }
    }
}
