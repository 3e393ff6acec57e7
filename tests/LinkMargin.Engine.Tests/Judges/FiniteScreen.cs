namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// Diffraction round an opaque screen of finite width. Recommendation ITU-R P.526-16 (11/2025), Annex 1, section 5.1,
/// Finite-width screen (formulas from memory): the screen is taken as knife edges, its two sides and its top, each with
/// its own loss J(v_i) as if alone, and j_i = 10^(J(v_i)/20).
/// </summary>
internal static class FiniteScreen
{
    /// <summary>J_min = −20·lg Σ 1/j_i, the loss where the waves round all edges meet in step.</summary>
    /// <param name="edgeLossesDb">J(v_i) of each edge, dB, 0 or more, at least one.</param>
    /// <returns>dB; never below 0.</returns>
    public static double LeastLossDb(params ReadOnlySpan<double> edgeLossesDb)
    {
        double sum = 0;
        foreach (double lossDb in Checked(edgeLossesDb))
        {
            sum += Math.Pow(10, -lossDb / 20);
        }

        return Math.Max(0, -20 * Math.Log10(sum));
    }

    /// <summary>J_av = −10·lg Σ 1/j_i², the mean loss over places a few wavelengths apart.</summary>
    /// <param name="edgeLossesDb">J(v_i) of each edge, dB, 0 or more, at least one.</param>
    /// <returns>dB; never below 0.</returns>
    public static double MeanLossDb(params ReadOnlySpan<double> edgeLossesDb)
    {
        double sum = 0;
        foreach (double lossDb in Checked(edgeLossesDb))
        {
            sum += Math.Pow(10, -lossDb / 10);
        }

        return Math.Max(0, -10 * Math.Log10(sum));
    }

    private static ReadOnlySpan<double> Checked(ReadOnlySpan<double> edgeLossesDb)
    {
        ArgumentOutOfRangeException.ThrowIfZero(edgeLossesDb.Length, nameof(edgeLossesDb));
        foreach (double lossDb in edgeLossesDb)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(lossDb, nameof(edgeLossesDb));
        }

        return edgeLossesDb;
    }
}
