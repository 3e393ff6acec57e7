using CsCheck;

namespace LinkMargin.Laws;

/// <summary>
/// Checks laws over random cases that are the same in every run: seeds 1, 2, 3 and so on, then the seeds in <c>also</c>, which
/// failed once in a long run (<see cref="LawRun.SecondsVariable"/>). A law gives false or throws where it does not hold.
/// Cases run one after the other, and none is made smaller: a failing one prints its seed and its values.
/// </summary>
public static class Law
{
    /// <summary>So many fixed seeds where a law does not say how many.</summary>
    public const int DefaultCases = 100;

    private static readonly LawRun Run = LawRun.Of(Environment.GetEnvironmentVariable);

    /// <summary>Checks that a law holds for all cases.</summary>
    /// <param name="gen">Makes a case.</param>
    /// <param name="law">Gives false, or throws, where a case breaks the law.</param>
    /// <param name="cases">How many fixed seeds, from 1.</param>
    /// <param name="also">Further fixed seeds: each that ever failed.</param>
    public static void ForAll<T>(this Gen<T> gen, Func<T, bool> law, int cases = DefaultCases, long[]? also = null)
    {
        string name = LawAttribute.RunningName ?? throw new InvalidOperationException(
            "A law runs in a test without the mark by which the long run finds it: write [Fact, Law] or [Theory, Law].");
        Run.Check(name, gen, law, cases, also ?? []);
    }

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T>(this Gen<T> gen, Action<T> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(value => Done(() => law(value)), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2>(
        this Gen<(T1, T2)> gen, Func<T1, T2, bool> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => law(c.Item1, c.Item2), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2>(
        this Gen<(T1, T2)> gen, Action<T1, T2> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => Done(() => law(c.Item1, c.Item2)), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2, T3>(
        this Gen<(T1, T2, T3)> gen, Func<T1, T2, T3, bool> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => law(c.Item1, c.Item2, c.Item3), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2, T3>(
        this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => Done(() => law(c.Item1, c.Item2, c.Item3)), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> gen, Func<T1, T2, T3, T4, bool> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => law(c.Item1, c.Item2, c.Item3, c.Item4), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => Done(() => law(c.Item1, c.Item2, c.Item3, c.Item4)), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> gen, Func<T1, T2, T3, T4, T5, bool> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => law(c.Item1, c.Item2, c.Item3, c.Item4, c.Item5), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> gen, Action<T1, T2, T3, T4, T5> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => Done(() => law(c.Item1, c.Item2, c.Item3, c.Item4, c.Item5)), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2, T3, T4, T5, T6>(
        this Gen<(T1, T2, T3, T4, T5, T6)> gen, Func<T1, T2, T3, T4, T5, T6, bool> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => law(c.Item1, c.Item2, c.Item3, c.Item4, c.Item5, c.Item6), cases, also);

    /// <inheritdoc cref="ForAll{T}(Gen{T}, Func{T, bool}, int, long[])"/>
    public static void ForAll<T1, T2, T3, T4, T5, T6>(
        this Gen<(T1, T2, T3, T4, T5, T6)> gen, Action<T1, T2, T3, T4, T5, T6> law, int cases = DefaultCases, long[]? also = null) =>
        gen.ForAll(c => Done(() => law(c.Item1, c.Item2, c.Item3, c.Item4, c.Item5, c.Item6)), cases, also);

    private static bool Done(Action law)
    {
        law();
        return true;
    }
}
