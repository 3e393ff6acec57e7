using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace LinkMargin.Engine.Materials;

/// <summary>Four complex numbers, for four frequencies at once.</summary>
internal readonly record struct ComplexLanes(Vector256<double> Real, Vector256<double> Imaginary)
{
    /// <summary>How many there are.</summary>
    internal const int Count = 4;

    /// <summary>The squares of their magnitudes.</summary>
    internal Vector256<double> SquaredMagnitude => (Real * Real) + (Imaginary * Imaginary);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator +(ComplexLanes a, ComplexLanes b) => new(a.Real + b.Real, a.Imaginary + b.Imaginary);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator *(ComplexLanes a, ComplexLanes b) =>
        new((a.Real * b.Real) - (a.Imaginary * b.Imaginary), (a.Real * b.Imaginary) + (a.Imaginary * b.Real));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator *(double a, ComplexLanes b) => new(a * b.Real, a * b.Imaginary);

    /// <summary>The quotient. Nothing here comes near the range of a double, so its square need not be avoided.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator /(ComplexLanes a, ComplexLanes b)
    {
        Vector256<double> over = Vector256<double>.One / b.SquaredMagnitude;
        return new(((a.Real * b.Real) + (a.Imaginary * b.Imaginary)) * over, ((a.Imaginary * b.Real) - (a.Real * b.Imaginary)) * over);
    }
}
