using SkiaSharp;

namespace LinkMargin.Plots.Colours;

/// <summary>The colours of one map: one tone between each two contour lines.</summary>
internal sealed class MarginColours
{
    private const int MostTones = 200;

    private readonly double lowestStep;
    private readonly SKColor[] tones;

    public MarginColours(ColourRange range, double stepDb)
    {
        if (!(range.GreatestDb > range.LeastDb && double.IsFinite(range.GreatestDb - range.LeastDb)))
        {
            throw new ArgumentException($"A range of colours must rise, unlike {range}.", nameof(range));
        }

        if (!((range.GreatestDb - range.LeastDb) / stepDb is > 0 and <= MostTones))
        {
            throw new ArgumentOutOfRangeException(
                nameof(stepDb), stepDb, $"A step must be above 0 dB and cut {range} into at most {MostTones} tones.");
        }

        (Range, StepDb) = (range, stepDb);
        lowestStep = Math.Floor(range.LeastDb / stepDb);
        int count = (int)(Math.Ceiling(range.GreatestDb / stepDb) - lowestStep);
        tones = [.. Enumerable.Range(0, count).Select(Tone)];
    }

    public ColourRange Range { get; }

    /// <summary>Step between tones, dB.</summary>
    public double StepDb { get; }

    /// <summary>The tones, lowest first.</summary>
    public IReadOnlyList<SKColor> Tones => tones;

    public SKColor Of(double marginDb) => tones[ToneOf(marginDb)];

    /// <summary>The number of the tone of a margin.</summary>
    public int ToneOf(double marginDb) => (int)Math.Clamp(Math.Floor(marginDb / StepDb) - lowestStep, 0, tones.Length - 1);

    /// <summary>Margins of the contour lines inside the range, lowest first.</summary>
    public IEnumerable<double> Lines()
    {
        for (double step = Math.Floor(Range.LeastDb / StepDb) + 1; step * StepDb < Range.GreatestDb; step++)
        {
            yield return step * StepDb;
        }
    }

    private SKColor Tone(int number)
    {
        double bottom = Math.Max((lowestStep + number) * StepDb, Range.LeastDb);
        double top = Math.Min((lowestStep + number + 1) * StepDb, Range.GreatestDb);
        return ColourScale.At((((bottom + top) / 2) - Range.LeastDb) / (Range.GreatestDb - Range.LeastDb));
    }
}
