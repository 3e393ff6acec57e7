namespace LinkMargin.Tests;

/// <summary>Stands in every test project: its tests give the same result in every run.</summary>
public sealed class SameResultEveryTimeTests
{
    /// <summary>Random cases come from <see cref="Law"/>, whose seeds are fixed, or from a <c>Random</c> with a seed.</summary>
    [Fact]
    public void No_test_draws_from_a_source_without_a_fixed_seed() =>
        Assert.Empty(UnseededRandomness.In(typeof(SameResultEveryTimeTests).Assembly));
}
