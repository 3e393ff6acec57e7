using System.Numerics;

namespace LinkMargin.Engine.Propagation;

/// <summary>One homogeneous layer of a slab at one frequency.</summary>
/// <param name="Permittivity">η = ε' − jε'', relative; imaginary part 0 or less.</param>
/// <param name="ThicknessMetres">d, metres, 0 or more.</param>
public readonly record struct SlabLayer(Complex Permittivity, double ThicknessMetres);
