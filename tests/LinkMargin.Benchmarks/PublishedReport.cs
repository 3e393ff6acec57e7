using System.Diagnostics;
using System.Globalization;

namespace LinkMargin.Benchmarks;

/// <summary>Whole runs of the published program against an empty console program, both as <c>dotnet publish</c> makes them.</summary>
internal static class PublishedReport
{
    private const int ExplainRuns = 40;
    private const int DemoRuns = 3;

    private const string EmptyProject = """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
          </PropertyGroup>
        </Project>
        """;

    internal static IReadOnlyList<Goal> Print(TextWriter output)
    {
        string folder = Directory.CreateTempSubdirectory("linkmargin-published-").FullName;
        try
        {
            output.WriteLine("Publishing the program and an empty one; a minute or two.");
            string empty = Path.Combine(folder, "empty"), program = Path.Combine(folder, "program"), demo = Path.Combine(folder, "demo");
            Directory.CreateDirectory(empty);
            File.WriteAllText(Path.Combine(empty, "empty.csproj"), EmptyProject);
            File.WriteAllText(Path.Combine(empty, "Program.cs"), "return 0;");
            Processes.Run("dotnet", "publish", empty, "-c", "Release", "-o", Path.Combine(folder, "nothing"));
            Processes.Run("dotnet", "publish", Path.Combine(Processes.Repository(), "src", "LinkMargin.Cli"), "-c", "Release", "-o", program);
            string linkmargin = Path.Combine(program, "linkmargin"), nothing = Path.Combine(folder, "nothing", "empty");
            Processes.Run(linkmargin, "demo", "--out", demo);

            string house = Path.Combine(demo, "tern-terrace.yaml");
            (double explain, double beside) = InTurn(
                ExplainRuns,
                () => Processes.Run(linkmargin, "explain", house, "--spot", "larder shelf", "--seat", "lounge sofa"),
                () => Processes.Run(nothing));
            Line(output, $"explain: {explain:F3} s; the empty program: {beside:F3} s (medians of {ExplainRuns} runs in turn)");
            (double all, double besideAll) = InTurn(DemoRuns, () => Processes.Run(linkmargin, "demo", "--out", demo), () => Processes.Run(nothing));
            Line(output, $"demo, all outputs: {all:F1} s (median of {DemoRuns} runs)");
            return
            [
                new Goal("explain from a published build against an empty console program", explain / beside, 2.5, 1.5, IsMost: true),
                new Goal("demo, all outputs, against an empty console program", all / besideAll, 8, 4, IsMost: true),
            ];
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static (double One, double Other) InTurn(int runs, Action one, Action other)
    {
        double[] ones = new double[runs], others = new double[runs];
        one();
        other();
        for (int i = 0; i < runs; i++)
        {
            ones[i] = Seconds(one);
            others[i] = Seconds(other);
        }

        return (Processes.Median(ones), Processes.Median(others));
    }

    private static double Seconds(Action run)
    {
        var watch = Stopwatch.StartNew();
        run();
        return watch.Elapsed.TotalSeconds;
    }

    private static void Line(TextWriter output, FormattableString text) =>
        output.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
