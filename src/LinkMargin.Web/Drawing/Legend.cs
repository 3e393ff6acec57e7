using LinkMargin.Engine.Fields;
using LinkMargin.Plots.Colours;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Drawing;

/// <summary>The colours of margins and the lines between them, as in the pictures.</summary>
internal static class Legend
{
    // As on maps (MapRequest.StepDb); probabilities go by tenths.
    private const double StepDb = 5;
    private const int ProbabilityTones = 10;

    /// <summary>The scale that suits some fields; one for as long as the page is open, so that what is seen can be compared.</summary>
    public static ScaleMessage For(IEnumerable<Field> fields, double requiredDb)
    {
        var scale = ToneScale.Covering(fields, requiredDb, StepDb);
        return new ScaleMessage(scale.Range.LeastDb, scale.Range.GreatestDb, StepDb, scale.Tones, scale.Lines, ToneScale.Even(ProbabilityTones));
    }
}
