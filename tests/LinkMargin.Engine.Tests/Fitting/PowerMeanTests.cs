using CsCheck;
using LinkMargin.Engine.Fitting;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Tests.Fitting;

public sealed class PowerMeanTests
{
    private static readonly Gen<double> Level = Gen.Double[-100, -20];

    [Fact]
    public void Ten_and_nothing_to_speak_of_make_three_decibels_less_than_ten()
    {
        (double level, bool heard, int count) = PowerMean.Of([-60, -160], []);
        Assert.Equal(-60 - (10 * Math.Log10(2)), level, 1e-6);
        Assert.Equal((true, 2), (heard, count));
    }

    [Fact, Law]
    public void A_mean_lies_between_the_lowest_and_the_highest_and_above_the_mean_of_decibels() =>
        Level.Array[1, 20].ForAll(levels =>
        {
            double mean = PowerMean.Of(levels, []).LevelDbm;
            return mean <= levels.Max() + 1e-9 && mean >= levels.Average() - 1e-9;
        });

    [Fact]
    public void Under_Rayleigh_fading_it_finds_the_level_that_the_mean_of_decibels_misses()
    {
        Random random = new(1);
        double[] faded = [.. Enumerable.Range(0, 20_000).Select(_ => -70 + (10 * Math.Log10(Exponential.Sample(random, 1))))];
        Assert.Equal(-70, PowerMean.Of(faded, []).LevelDbm, 0.1);
        Assert.Equal(-70 - (10 * Constants.EulerMascheroni / Math.Log(10)), faded.Average(), 0.15);
    }

    [Theory]
    [InlineData(2, 1, true)]
    [InlineData(1, 1, false)]
    [InlineData(0, 3, false)]
    public void Where_most_were_not_heard_there_is_only_a_bound(int heard, int silent, bool isHeard)
    {
        (double level, bool found, int count) =
            PowerMean.Of([.. Enumerable.Repeat(-85.0, heard)], [.. Enumerable.Range(0, silent).Select(i => -90.0 - i)]);
        Assert.Equal(isHeard, found);
        Assert.Equal(isHeard ? heard + silent : 1, count);
        Assert.True(isHeard ? level is > -90 and < -85 : level == -90);
    }

    [Theory]
    [InlineData(4, 4)]
    [InlineData(5, 1)]
    [InlineData(1000, 1)]
    public void Copies_of_one_number_are_one_sample(int rows, int samples) =>
        Assert.Equal(samples, PowerMean.Of([.. Enumerable.Repeat(-63.0, rows)], []).SampleCount);

    [Fact]
    public void Nothing_has_no_mean() => Assert.Throws<ArgumentException>(() => PowerMean.Of([], []));
}
