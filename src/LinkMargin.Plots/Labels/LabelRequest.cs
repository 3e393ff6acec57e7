namespace LinkMargin.Plots.Labels;

/// <summary>A label that wants a place near its mark.</summary>
/// <param name="X">The mark's centre, pixels from the left.</param>
/// <param name="Y">The mark's centre, pixels from the top.</param>
/// <param name="MarkRadius">Half the mark's size, pixels.</param>
/// <param name="Width">The label's width, pixels.</param>
/// <param name="Height">The label's height, pixels.</param>
internal sealed record LabelRequest(double X, double Y, double MarkRadius, double Width, double Height)
{
    /// <summary>The ground the mark itself takes.</summary>
    public LabelBox Mark => LabelBox.Around(X, Y, MarkRadius, MarkRadius);
}
