using System.Diagnostics;
using System.Globalization;
using System.Text;
using CsCheck;

namespace LinkMargin.Laws;

/// <summary>
/// Which cases of a law run. Each case has a seed, and the seed alone makes the case: the same in every law, process and order.
/// </summary>
/// <param name="OnlySeed">Run this case alone, to look at a failure; null: all.</param>
/// <param name="LongRunFor">Run fresh seeds for this time; null: the fixed seeds.</param>
public sealed record LawRun(long? OnlySeed, TimeSpan? LongRunFor)
{
    /// <summary>Environment variable with the time that each law runs fresh seeds for, seconds above 0.</summary>
    public const string SecondsVariable = "LINKMARGIN_LAW_SECONDS";

    /// <summary>Environment variable with the seed of the only case to run, a whole number from 0.</summary>
    public const string SeedVariable = "LINKMARGIN_LAW_SEED";

    /// <summary>So many failing seeds end a long run of a law: more say nothing new.</summary>
    public const int MostFailures = 20;

    // A case may be a whole house with all its parts: the seed makes it again.
    private const int MostCharactersOfACase = 4000;

    /// <summary>What the environment asks for; <paramref name="variable"/> gives a variable's value.</summary>
    public static LawRun Of(Func<string, string?> variable)
    {
        ArgumentNullException.ThrowIfNull(variable);
        string? seconds = variable(SecondsVariable), seed = variable(SeedVariable);
        double runSeconds = 0;
        if (!string.IsNullOrEmpty(seconds)
            && !(double.TryParse(seconds, CultureInfo.InvariantCulture, out runSeconds) && runSeconds > 0 && runSeconds <= 1e6))
        {
            throw new ArgumentException($"{SecondsVariable} is '{seconds}': give seconds above 0 and up to 1000000.", nameof(variable));
        }

        long only = 0;
        if (!string.IsNullOrEmpty(seed) && !long.TryParse(seed, NumberStyles.None, CultureInfo.InvariantCulture, out only))
        {
            throw new ArgumentException($"{SeedVariable} is '{seed}': give a seed as a failing law prints it.", nameof(variable));
        }

        return new LawRun(
            string.IsNullOrEmpty(seed) ? null : only, string.IsNullOrEmpty(seconds) ? null : TimeSpan.FromSeconds(runSeconds));
    }

    /// <summary>The generator of random numbers of a case. Mixed, since the first numbers of neighbouring seeds are alike.</summary>
    public static PCG GeneratorOf(long seed)
    {
        ulong first = Mixed((ulong)seed), second = Mixed(first);
        return new PCG((uint)(first >> 32), second);
    }

    /// <summary>Checks the cases one after the other.</summary>
    /// <param name="name">The law, for messages.</param>
    /// <param name="gen">Makes a case.</param>
    /// <param name="law">Gives false or throws where a case breaks the law.</param>
    /// <param name="cases">How many fixed seeds: 1, 2, 3 and so on.</param>
    /// <param name="also">Further fixed seeds.</param>
    /// <exception cref="LawBrokenException">The law is broken. Fixed seeds stop at the first that breaks it.</exception>
    public void Check<T>(string name, Gen<T> gen, Func<T, bool> law, int cases, IReadOnlyList<long> also)
    {
        ArgumentNullException.ThrowIfNull(gen);
        ArgumentNullException.ThrowIfNull(law);
        ArgumentNullException.ThrowIfNull(also);
        ArgumentOutOfRangeException.ThrowIfLessThan(cases, 1);
        int most = LongRunFor is null || OnlySeed is not null ? 1 : MostFailures;
        List<LawBrokenException> failures = [];
        foreach (long seed in Seeds(cases, also))
        {
            if (Broken(name, gen, law, seed) is { } failure)
            {
                failures.Add(failure);
                if (failures.Count == most)
                {
                    break;
                }
            }
        }

        if (failures.Count == 1)
        {
            throw failures[0];
        }

        if (failures.Count > 1)
        {
            string seeds = string.Join(", ", failures.Select(f => f.Seed.ToString(CultureInfo.InvariantCulture)));
            throw new LawBrokenException(
                $"{name}: {failures.Count} seeds fail: {seeds}. The first:\n{failures[0].Message}", failures[0].Seed, failures[0]);
        }
    }

    private IEnumerable<long> Seeds(int cases, IReadOnlyList<long> also)
    {
        if (OnlySeed is { } only)
        {
            return [only];
        }

        return LongRunFor is { } time ? Fresh(time) : Enumerable.Range(1, cases).Select(i => (long)i).Concat(also);

        static IEnumerable<long> Fresh(TimeSpan time)
        {
            var watch = Stopwatch.StartNew();
            do
            {
                yield return Random.Shared.NextInt64();
            }
            while (watch.Elapsed < time);
        }
    }

    private static LawBrokenException? Broken<T>(string name, Gen<T> gen, Func<T, bool> law, long seed)
    {
        T value;
        try
        {
            value = gen.Generate(GeneratorOf(seed), null, out _);
        }
        catch (Exception error)
        {
            return new LawBrokenException(Message(name, seed, "the case could not be made: " + error.Message, null), seed, error);
        }

        try
        {
            return law(value) ? null : new LawBrokenException(Message(name, seed, "it does not hold", Printed(value)), seed, null);
        }
        catch (Exception error)
        {
            return new LawBrokenException(Message(name, seed, error.Message, Printed(value)), seed, error);
        }
    }

    private static string Message(string name, long seed, string what, string? value)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"{name} fails for seed {seed}: {what}\n");
        text.Append(CultureInfo.InvariantCulture, $"This case alone: {SeedVariable}={seed} dotnet test --filter {name}\n");
        text.Append(CultureInfo.InvariantCulture, $"A seed that is not one of the fixed ones becomes one: also: [{seed}]\n");
        if (value is not null)
        {
            text.Append("Case: ").Append(value);
        }

        return text.ToString();
    }

    private static string Printed<T>(T value)
    {
        string text = CsCheck.Check.Print(value);
        return text.Length <= MostCharactersOfACase ? text : text[..MostCharactersOfACase] + " ...";
    }

    // One step of SplitMix64 (Steele, Lea, Flood: Fast Splittable Pseudorandom Number Generators, 2014; constants from memory).
    private static ulong Mixed(ulong seed)
    {
        ulong z = seed + 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}

/// <summary>A case that breaks a law.</summary>
public sealed class LawBrokenException(string message, long seed, Exception? inner) : Exception(message, inner)
{
    /// <summary>The seed that makes the case again; of several, the first.</summary>
    public long Seed => seed;
}
