using CsCheck;

namespace LinkMargin.Laws.Tests;

/// <summary>The same cases in every run, each with a seed that makes it again.</summary>
public sealed class LawTests
{
    private static readonly LawRun Fixed = new(null, null);

    private static readonly Gen<double> Number = Gen.Double[0, 1];

    [Fact, Law]
    public void A_marked_test_runs_each_fixed_seed_once()
    {
        List<double> drawn = [];
        Number.ForAll(drawn.Add, cases: 5, also: [700]);
        // A long run draws other cases, and one case alone is one.
        if (Environment.GetEnvironmentVariable(LawRun.SecondsVariable) is null
            && Environment.GetEnvironmentVariable(LawRun.SeedVariable) is null)
        {
            Assert.Equal([.. new long[] { 1, 2, 3, 4, 5, 700 }.Select(OfSeed)], drawn);
        }
    }

    [Fact]
    public void A_test_without_the_mark_is_refused() =>
        Assert.Contains("[Fact, Law]", Assert.Throws<InvalidOperationException>(() => Number.ForAll(_ => true)).Message, StringComparison.Ordinal);

    [Fact]
    public void Two_runs_draw_the_same_and_neighbouring_seeds_draw_apart()
    {
        double[] one = Drawn(Fixed, 200);
        Assert.Equal(one, Drawn(Fixed, 200));

        Assert.True(one.Distinct().Count() > 100);

        // Four standard deviations of 200 tosses on either side of half.
        int heads = 0;
        Fixed.Check("Some.law", Gen.Bool, isHead => { heads += isHead ? 1 : 0; return true; }, 200, []);
        Assert.InRange(heads, 72, 128);
    }

    [Fact]
    public void A_broken_law_names_its_seed_and_values_and_stops()
    {
        int calls = 0;
        LawBrokenException broken = Assert.Throws<LawBrokenException>(() => Fixed.Check(
            "Some.law", Gen.Select(Gen.Const(5), Gen.Const(2.5)), _ => ++calls < 3, 10, []));
        Assert.Equal((3, 3), (broken.Seed, calls));
        Assert.Contains("Some.law fails for seed 3", broken.Message, StringComparison.Ordinal);
        Assert.Contains("LINKMARGIN_LAW_SEED=3 dotnet test --filter Some.law", broken.Message, StringComparison.Ordinal);
        Assert.EndsWith("Case: (5, 2.5)", broken.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_law_that_throws_is_broken_and_keeps_what_it_threw()
    {
        LawBrokenException broken = Assert.Throws<LawBrokenException>(() => Fixed.Check(
            "Some.law", Number, _ => throw new InvalidOperationException("told"), 1, []));
        Assert.IsType<InvalidOperationException>(broken.InnerException);
        Assert.Contains("told", broken.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_seed_runs_alone()
    {
        List<double> drawn = [];
        new LawRun(42, TimeSpan.FromDays(1)).Check("Some.law", Number, x => { drawn.Add(x); return true; }, 10, [3]);
        Assert.Equal([OfSeed(42)], drawn);
    }

    [Fact]
    public void A_long_run_draws_fresh_seeds_and_tells_each_that_fails()
    {
        LawBrokenException broken = Assert.Throws<LawBrokenException>(() => new LawRun(null, TimeSpan.FromDays(1)).Check(
            "Some.law", Gen.Long, _ => false, 1, []));
        Assert.Contains($"{LawRun.MostFailures} seeds fail: ", broken.Message, StringComparison.Ordinal);
        Assert.NotEqual(1, broken.Seed);
    }

    [Theory]
    [InlineData(null, null, null, null)]
    [InlineData("", "", null, null)]
    [InlineData("0.5", null, 0.5, null)]
    [InlineData(null, "0", null, 0L)]
    [InlineData("60", "9223372036854775807", 60.0, 9223372036854775807)]
    public void The_environment_says_what_runs(string? seconds, string? seed, double? longRunFor, long? only)
    {
        LawRun run = LawRun.Of(name => name == LawRun.SecondsVariable ? seconds : seed);
        Assert.Equal(longRunFor, run.LongRunFor?.TotalSeconds);
        Assert.Equal(only, run.OnlySeed);
    }

    [Theory]
    [InlineData("0", null)]
    [InlineData("-1", null)]
    [InlineData("NaN", null)]
    [InlineData("1000001", null)]
    [InlineData("soon", null)]
    [InlineData(null, "-1")]
    [InlineData(null, "1.5")]
    public void What_cannot_be_meant_is_refused(string? seconds, string? seed) =>
        Assert.Throws<ArgumentException>(() => LawRun.Of(name => name == LawRun.SecondsVariable ? seconds : seed));

    [Fact]
    public void Randomness_without_a_seed_is_found_in_an_assembly() =>
        Assert.Equal(["System.Random.get_Shared"], UnseededRandomness.In(typeof(LawRun).Assembly));

    [Theory]
    [InlineData("CsCheck.Check", "Sample", 11, true)]
    [InlineData("CsCheck.Check", "SampleParallel", 9, true)]
    [InlineData("CsCheck.Check", "Print", 1, false)]
    [InlineData("System.Random", ".ctor", 0, true)]
    [InlineData("System.Random", ".ctor", 1, false)]
    [InlineData("MathNet.Numerics.Distributions.Normal", "Sample", 2, true)]
    [InlineData("MathNet.Numerics.Distributions.Normal", "Sample", 3, false)]
    public void Only_what_has_no_seed_is_forbidden(string type, string member, int arguments, bool isForbidden) =>
        Assert.Equal(isForbidden, UnseededRandomness.IsForbidden(type, member, arguments));

    private static double[] Drawn(LawRun run, int cases)
    {
        List<double> drawn = [];
        run.Check("Some.law", Number, x => { drawn.Add(x); return true; }, cases, []);
        return [.. drawn];
    }

    private static double OfSeed(long seed) => Number.Generate(LawRun.GeneratorOf(seed), null, out _);
}
