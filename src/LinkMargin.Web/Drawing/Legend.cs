using LinkMargin.Engine.Fields;
using LinkMargin.Plots.Colours;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Drawing;

/// <summary>The colours of margins and the lines between them, as in the pictures.</summary>
internal static class Legend
{
    // The step of the maps (MapRequest.StepDb); probabilities use steps of a tenth.
    private const double StepDb = 5;
    private const int ProbabilityTones = 10;

    /// <summary>A scale that suits some fields; it stays the same while the page is open, so that maps can be compared.</summary>
    public static ScaleMessage For(IEnumerable<Field> fields, double requiredDb)
    {
        var scale = ToneScale.Covering(fields, requiredDb, StepDb);
        return new ScaleMessage(scale.Range.LeastDb, scale.Range.GreatestDb, StepDb, scale.Tones, scale.Lines, ToneScale.Even(ProbabilityTones));
    }
}
