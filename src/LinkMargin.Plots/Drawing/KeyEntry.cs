using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Drawing;

/// <summary>One sign with its meaning.</summary>
/// <param name="SamplePoints">Width of the sign, points; 0 for a remark without one.</param>
/// <param name="Text">What it means.</param>
/// <param name="DrawSample">Draws the sign in a box.</param>
internal sealed record KeyEntry(double SamplePoints, string Text, Action<SKCanvas, LabelBox> DrawSample);
