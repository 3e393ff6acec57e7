using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace LinkMargin.Engine.Materials;

/// <summary>
/// What <see cref="LayeredSlab"/> computes, by the same recursion, of four frequencies at once and for many examples of one panel: what belongs to a
/// layer of one thickness is computed once and serves every example with it.
/// </summary>
internal sealed class SlabLanes
{
    // Below this real part of δ, 1 − e^{−2δ} comes from sinh, so that no digits cancel.
    private const double Thin = 1;

    // 1/(2k + 1)! of sinh, which is enough below Thin.
    private static readonly double[] Sinh =
        [1, 1.0 / 6, 1.0 / 120, 1.0 / 5040, 1.0 / 362880, 1.0 / 39916800, 1.0 / 6227020800, 1.0 / 1307674368000, 1.0 / 355687428096000, 1.0 / 121645100408832000];

    private readonly Vector256<double> waveNumbers; // k0
    private readonly ComplexLanes[] permittivities; // of each layer
    private readonly double[][] thicknessesMetres; // of each layer, every one that occurs
    private readonly int[] firstVariant; // of each layer

    /// <summary>Prepares a panel.</summary>
    /// <param name="wavelengthsMetres">λ of each frequency, metres.</param>
    /// <param name="permittivities">η of each layer, by frequency.</param>
    /// <param name="thicknessesMetres">Every thickness of each layer, metres.</param>
    internal SlabLanes(ReadOnlySpan<double> wavelengthsMetres, IReadOnlyList<Complex[]> permittivities, double[][] thicknessesMetres)
    {
        waveNumbers = Vector256.Create(2 * Math.PI) / Vector256.Create(wavelengthsMetres);
        this.permittivities =
        [
            .. permittivities.Select(layer => new ComplexLanes(
                Vector256.Create(layer[0].Real, layer[1].Real, layer[2].Real, layer[3].Real),
                Vector256.Create(layer[0].Imaginary, layer[1].Imaginary, layer[2].Imaginary, layer[3].Imaginary))),
        ];
        this.thicknessesMetres = thicknessesMetres;
        firstVariant = new int[thicknessesMetres.Length + 1];
        for (int layer = 0; layer < thicknessesMetres.Length; layer++)
        {
            firstVariant[layer + 1] = firstVariant[layer] + thicknessesMetres[layer].Length;
        }
    }

    /// <summary>How many layers there are, each thickness counted.</summary>
    internal int Variants => firstVariant[^1];

    /// <summary>Computes what belongs to each layer at an angle.</summary>
    /// <param name="cos">cos θ, at least <see cref="LayeredSlab.LeastCosine"/>.</param>
    /// <param name="layers">Receives the layers, in order, each with all of its thicknesses; <see cref="Variants"/> long.</param>
    internal void Prepare(double cos, Span<SlabLayerLanes> layers)
    {
        for (int layer = 0; layer < permittivities.Length; layer++)
        {
            ComplexLanes eta = permittivities[layer], s = NormalComponent(eta, cos), te = s, tm = s / eta;
            double[] thicknesses = thicknessesMetres[layer];
            for (int i = 0; i < thicknesses.Length; i++)
            {
                // δ = j·k0·s·d
                Vector256<double> depth = waveNumbers * thicknesses[i];
                (ComplexLanes once, ComplexLanes less) = Through(-s.Imaginary * depth, s.Real * depth);
                layers[firstVariant[layer] + i] = new SlabLayerLanes(te, tm, once, less);
            }
        }
    }

    /// <summary>Response of one example to both polarisations.</summary>
    /// <param name="cos">cos θ.</param>
    /// <param name="layers">What <see cref="Prepare"/> gave.</param>
    /// <param name="variants">The thickness of each layer, by number.</param>
    /// <returns>TE, then TM.</returns>
    internal (SlabLanesResponse Te, SlabLanesResponse Tm) Solve(double cos, ReadOnlySpan<SlabLayerLanes> layers, ReadOnlySpan<int> variants)
    {
        // Air behind: its admittance is cos θ for either polarisation.
        var air = new ComplexLanes(Vector256.Create(cos), Vector256<double>.Zero);
        ComplexLanes seenTe = air, seenTm = air, passTe = new(Vector256<double>.One, Vector256<double>.Zero), passTm = passTe;
        for (int n = variants.Length - 1; n >= 0; n--)
        {
            ref readonly SlabLayerLanes layer = ref layers[firstVariant[n] + variants[n]];
            var more = new ComplexLanes(Vector256.Create(2.0) - layer.Less.Real, -layer.Less.Imaginary); // 1 + E
            AddLayer(layer.Te, layer, more, ref seenTe, ref passTe);
            AddLayer(layer.Tm, layer, more, ref seenTm, ref passTm);
        }

        return (Response(seenTe, passTe, cos), Response(seenTm, passTm, cos));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void AddLayer(in ComplexLanes y, in SlabLayerLanes layer, in ComplexLanes more, ref ComplexLanes seen, ref ComplexLanes pass)
    {
        ComplexLanes one = y / ((more * y) + (layer.Less * seen));
        pass = 2 * (pass * layer.Once * one);
        seen = one * ((more * seen) + (layer.Less * y));
    }

    private static SlabLanesResponse Response(in ComplexLanes seen, in ComplexLanes pass, double cos)
    {
        var front = new ComplexLanes(Vector256.Create(cos) + seen.Real, seen.Imaginary);
        var back = new ComplexLanes(Vector256.Create(cos) - seen.Real, -seen.Imaginary);
        return new(2 * cos * pass / front, back / front);
    }

    // √(η − sin²θ), as in LayeredSlab.
    private static ComplexLanes NormalComponent(in ComplexLanes eta, double cos)
    {
        Vector256<double> real = eta.Real - Vector256<double>.One + Vector256.Create(cos * cos);
        Vector256<double> root = Vector256.Sqrt((Vector256.Sqrt((real * real) + (eta.Imaginary * eta.Imaginary)) + real) * 0.5);
        return new(root, eta.Imaginary / (root + root));
    }

    // e^{−δ} and 1 − e^{−2δ} of δ = a + jb, as in LayeredSlab.
    private static (ComplexLanes Once, ComplexLanes OneLessTwice) Through(Vector256<double> a, Vector256<double> b)
    {
        (Vector256<double> sin, Vector256<double> cos) = Vector256.SinCos(b);
        Vector256<double> once = Vector256.Exp(-a), twice = once * once, square = a * a, sinh = Vector256.Create(Sinh[^1]);
        for (int i = Sinh.Length - 2; i >= 0; i--)
        {
            sinh = (sinh * square) + Vector256.Create(Sinh[i]);
        }

        Vector256<double> lost = Vector256.ConditionalSelect(
            Vector256.LessThan(a, Vector256.Create(Thin)), 2 * once * sinh * a, Vector256<double>.One - twice);
        return (new(once * cos, -once * sin), new(lost + (2 * twice * sin * sin), 2 * twice * sin * cos));
    }
}

/// <summary>One layer of one thickness at one angle and four frequencies.</summary>
/// <param name="Te">Its admittance y for TE.</param>
/// <param name="Tm">The same for TM.</param>
/// <param name="Once">e^{−δ}.</param>
/// <param name="Less">1 − e^{−2δ}.</param>
internal readonly record struct SlabLayerLanes(ComplexLanes Te, ComplexLanes Tm, ComplexLanes Once, ComplexLanes Less);

/// <summary>What a slab in air does to a wave of four frequencies.</summary>
/// <param name="Transmission">T.</param>
/// <param name="Reflection">R.</param>
internal readonly record struct SlabLanesResponse(ComplexLanes Transmission, ComplexLanes Reflection);
