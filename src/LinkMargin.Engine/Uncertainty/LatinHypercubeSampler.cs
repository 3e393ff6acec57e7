using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// Draws from the standard normal law, evenly: of N draws of one unknown, one falls in the middle of each Nth part of the
/// law, in an order of the unknown's own (a Latin hypercube). Sums then scatter far less from one seed to another than with
/// draws by themselves. The order hangs on the seed and the unknown's name alone, so an unknown has the same draws whichever
/// links are asked about.
/// </summary>
internal sealed class LatinHypercubeSampler
{
    private readonly double[] normals;
    private readonly ulong seed;

    internal LatinHypercubeSampler(int count, ulong seed)
    {
        this.seed = seed;
        normals = [.. Enumerable.Range(0, count).Select(i => Normal.InvCDF(0, 1, (i + 0.5) / count))];
    }

    /// <summary>One unknown's draws.</summary>
    /// <param name="name">The unknown.</param>
    internal double[] Of(string name)
    {
        ulong state = Mixed(seed ^ Hash(name));
        double[] drawn = [.. normals];
        for (int i = drawn.Length - 1; i > 0; i--)
        {
            state += 0x9E3779B97F4A7C15; // the golden ratio in 64 bits: Steele, Lea and Flood, Splittable generators, 2014
            int j = (int)(Mixed(state) % (ulong)(i + 1)); // unevenness by 2^-54 at most
            (drawn[i], drawn[j]) = (drawn[j], drawn[i]);
        }

        return drawn;
    }

    // FNV-1a. String.GetHashCode differs from run to run.
    private static ulong Hash(string name)
    {
        ulong hash = 14695981039346656037;
        foreach (char letter in name)
        {
            hash = (hash ^ letter) * 1099511628211;
        }

        return hash;
    }

    private static ulong Mixed(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
