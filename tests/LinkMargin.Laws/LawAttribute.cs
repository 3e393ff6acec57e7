using System.Reflection;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace LinkMargin.Laws;

/// <summary>
/// Marks a test that checks a law over random cases, beside its <c>[Fact]</c> or <c>[Theory]</c>: <c>--filter Category=Law</c>
/// finds it. <see cref="Law"/> refuses to run in a test without this mark, so the long run misses no law.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
[TraitDiscoverer("LinkMargin.Laws." + nameof(LawTraitDiscoverer), "LinkMargin.Laws")]
public sealed class LawAttribute : BeforeAfterTestAttribute, ITraitAttribute
{
    private static readonly AsyncLocal<string?> Running = new();

    /// <summary>The marked test that runs, as class and method; null outside of one.</summary>
    internal static string? RunningName => Running.Value;

    public override void Before(MethodInfo methodUnderTest)
    {
        ArgumentNullException.ThrowIfNull(methodUnderTest);
        Running.Value = $"{methodUnderTest.ReflectedType?.Name}.{methodUnderTest.Name}";
    }

    public override void After(MethodInfo methodUnderTest) => Running.Value = null;
}

/// <summary>Tells the test runner the category of a <see cref="LawAttribute"/>.</summary>
public sealed class LawTraitDiscoverer : ITraitDiscoverer
{
    public IEnumerable<KeyValuePair<string, string>> GetTraits(IAttributeInfo traitAttribute) => [new("Category", "Law")];
}
