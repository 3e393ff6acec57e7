using System.Collections.Concurrent;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// Stratified draws from the standard normal distribution: of N draws of one unknown, one is in the middle of each Nth part of
/// the distribution, in an order of the unknown's own (a Latin hypercube). Sums then vary far less from seed to seed than with
/// independent draws. The order depends only on the seed and the unknown's name, so an unknown has the same draws whichever
/// links are computed. Draws are kept, so that links computed one after the other share them.
/// </summary>
internal sealed class LatinHypercubeSampler
{
    private readonly double[] normals;
    private readonly ulong seed;
    private readonly ConcurrentDictionary<string, double[]> known = [];

    internal LatinHypercubeSampler(int count, ulong seed)
    {
        this.seed = seed;
        normals = [.. Enumerable.Range(0, count).Select(i => Normal.InvCDF(0, 1, (i + 0.5) / count))];
    }

    /// <summary>Draws for a basis.</summary>
    internal LatinHypercubeSampler(UncertaintyBasis basis)
        : this(basis.Draws, basis.Seed)
    {
    }

    /// <summary>One unknown's draws; never to be changed.</summary>
    /// <param name="name">The unknown.</param>
    internal double[] Of(string name) => known.GetOrAdd(name, Draw);

    private double[] Draw(string name)
    {
        ulong state = Mixed(seed ^ Hash(name));
        double[] drawn = [.. normals];
        for (int i = drawn.Length - 1; i > 0; i--)
        {
            state += 0x9E3779B97F4A7C15; // the golden ratio in 64 bits: Steele, Lea and Flood, Splittable generators, 2014
            int j = (int)(Mixed(state) % (ulong)(i + 1)); // biased by 2^-54 at most
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
