using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Maps;

/// <summary>A figure written along a line of equal margin.</summary>
/// <param name="Text">The margin, dB.</param>
/// <param name="X">Centre, pixels.</param>
/// <param name="Y">Centre, pixels.</param>
/// <param name="TurnDegrees">Turn, clockwise, never upside down.</param>
/// <param name="Box">The upright box it takes.</param>
internal sealed record ContourText(string Text, double X, double Y, double TurnDegrees, LabelBox Box);
