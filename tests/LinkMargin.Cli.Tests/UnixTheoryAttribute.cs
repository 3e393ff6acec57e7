namespace LinkMargin.Cli.Tests;

/// <summary>A test of what only Unix has: links that anybody may make, signals, descriptors, named pipes.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class UnixTheoryAttribute : TheoryAttribute
{
    public UnixTheoryAttribute() => Skip = OperatingSystem.IsWindows() ? "only on Unix" : null;
}
