namespace LinkMargin.Files.Tests.Writing;

/// <summary>A test of what only Unix has: devices, named pipes, links that anybody may make.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class UnixFactAttribute : FactAttribute
{
    public UnixFactAttribute() => Skip = OperatingSystem.IsWindows() ? "only on Unix" : null;
}
