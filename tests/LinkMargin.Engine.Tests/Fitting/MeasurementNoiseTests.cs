using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Fitting;

public sealed class MeasurementNoiseTests
{
    private static readonly Spreads Spreads = new(4, 0.25, 3, 0.05, 20, 10, 12);

    [Fact]
    public void In_the_open_one_measurement_has_the_models_and_its_own_spread() =>
        Assert.Equal(5, MeasurementNoise.Db(Spreads, 1, [], []), 1e-12);

    [Fact]
    public void However_many_samples_leave_what_the_model_leaves_out() =>
        Assert.Equal(4, MeasurementNoise.Db(Spreads, 1_000_000, [], []), 1e-4);

    [Fact]
    public void Crossings_add_their_own_variances() =>
        Assert.Equal(Math.Sqrt(25 + (3 * 1)), MeasurementNoise.Db(Spreads, 1, [3], [2]), 1e-12);

    [Fact]
    public void A_measurement_has_at_least_one_sample() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MeasurementNoise.Db(Spreads, 0, [], []));
}
