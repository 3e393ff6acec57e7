using System.Globalization;

namespace LinkMargin.Benchmarks;

/// <summary>The program of the commit that today's is measured against, built in a scratch folder.</summary>
internal sealed class YardstickBuild
{
    /// <summary>The commit.</summary>
    internal const string Commit = "5e9b1f7";

    private const string ProbeProject = """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <AssemblyName>LinkMargin.Benchmarks</AssemblyName>
            <DefineConstants>YARDSTICK</DefineConstants>
            <RestorePackagesWithLockFile>false</RestorePackagesWithLockFile>
            <RunAnalyzers>false</RunAnalyzers>
            <GenerateDocumentationFile>false</GenerateDocumentationFile>
            <EnableDefaultCompileItems>false</EnableDefaultCompileItems>
          </PropertyGroup>
          <ItemGroup>
            <Compile Include="*.cs" />
            <Compile Include="../LinkMargin.Benchmarks/SyntheticHouse.cs" />
            <ProjectReference Include="../../src/LinkMargin.Engine/LinkMargin.Engine.csproj" />
            <ProjectReference Include="../../src/LinkMargin.Files/LinkMargin.Files.csproj" />
          </ItemGroup>
        </Project>
        """;

    // Both programs are slowed by whatever else the machine does: they run in turn, and the fastest of each counts.
    private const int Rounds = 4;

    private readonly string source;
    private readonly string scratch;

    /// <summary>Clones the commit and builds the probe.</summary>
    /// <param name="repository">A clone that holds the commit.</param>
    /// <param name="scratch">An empty folder.</param>
    internal YardstickBuild(string repository, string scratch)
    {
        this.scratch = scratch;
        source = Path.Combine(scratch, "yardstick");
        Processes.Run("git", "clone", "--quiet", "--no-checkout", repository, source);
        Processes.Run("git", "-C", source, "checkout", "--quiet", Commit);
        string probe = Path.Combine(source, "tests", "Probe");
        Directory.CreateDirectory(probe);
        File.WriteAllText(Path.Combine(probe, "Probe.csproj"), ProbeProject);
        File.Copy(Path.Combine(repository, "tests", "LinkMargin.Benchmarks", "Yardstick", "YardstickProbe.cs"), Path.Combine(probe, "YardstickProbe.cs"));
        File.WriteAllText(Path.Combine(probe, "Program.cs"), "LinkMargin.Benchmarks.YardstickProbe.Print(args[0], System.Console.Out);");
        Processes.Run("dotnet", "build", probe, "-c", "Release", "-o", Path.Combine(scratch, "probe"));
        Probe = Path.Combine(scratch, "probe", "LinkMargin.Benchmarks");
    }

    /// <summary>Publishes the commit's program.</summary>
    internal string Publish()
    {
        string folder = Path.Combine(scratch, "yardstick-program");
        Processes.Run("dotnet", "publish", Path.Combine(source, "src", "LinkMargin.Cli"), "-c", "Release", "-o", folder);
        return Path.Combine(folder, "linkmargin");
    }

    private string Probe { get; }

    /// <summary>The times that the commit's code and today's take, each in processes of its own, by name, seconds.</summary>
    internal (IReadOnlyDictionary<string, double> Before, IReadOnlyDictionary<string, double> Now) Times(string house)
    {
        Dictionary<string, double> before = [], now = [];
        for (int round = 0; round < Rounds; round++)
        {
            Keep(before, Processes.Run(Probe, house).Output);
            Keep(now, Processes.Run(Environment.ProcessPath!, YardstickProbe.Command, house).Output);
        }

        return (before, now);
    }

    private static void Keep(Dictionary<string, double> fastest, string printed)
    {
        foreach ((string name, double seconds) in Parsed(printed))
        {
            fastest[name] = Math.Min(seconds, fastest.GetValueOrDefault(name, double.PositiveInfinity));
        }
    }

    // Times as the probe prints them.
    private static Dictionary<string, double> Parsed(string printed) => printed
        .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(line => line.Split(' '))
        .ToDictionary(parts => parts[0], parts => double.Parse(parts[1], CultureInfo.InvariantCulture));
}
