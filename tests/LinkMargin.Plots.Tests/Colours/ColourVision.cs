using LinkMargin.Plots.Colours;

namespace LinkMargin.Plots.Tests.Colours;

/// <summary>
/// What a colour looks like to an eye without red or green cones: the matrices for severity 1.0 of G. M. Machado,
/// M. M. Oliveira, L. A. F. Fernandes, "A physiologically-based model for simulation of color vision deficiency", IEEE
/// Transactions on Visualization and Computer Graphics 15 (2009) 1291, in linear light; six digits printed.
/// </summary>
internal sealed class ColourVision
{
    private readonly double[,] matrix;

    private ColourVision(double[,] matrix) => this.matrix = matrix;

    public static ColourVision Normal { get; } = new(new double[,] { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } });

    public static ColourVision Protan { get; } = new(new[,]
    {
        { 0.152286, 1.052583, -0.204868 },
        { 0.114503, 0.786281, 0.099216 },
        { -0.003882, -0.048116, 1.051998 },
    });

    public static ColourVision Deutan { get; } = new(new[,]
    {
        { 0.367322, 0.860646, -0.227968 },
        { 0.280085, 0.672501, 0.047413 },
        { -0.011820, 0.042940, 0.968881 },
    });

    public static IReadOnlyList<ColourVision> All { get; } = [Normal, Protan, Deutan];

    public Oklab Seen(Oklab colour)
    {
        (double r, double g, double b) = colour.ToLinear();
        double Row(int i) => Math.Clamp((matrix[i, 0] * r) + (matrix[i, 1] * g) + (matrix[i, 2] * b), 0, 1);
        return Oklab.FromLinear(Row(0), Row(1), Row(2));
    }
}
