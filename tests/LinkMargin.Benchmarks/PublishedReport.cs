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
            Run("dotnet", "publish", empty, "-c", "Release", "-o", Path.Combine(folder, "nothing"));
            Run("dotnet", "publish", Path.Combine(Repository(), "src", "LinkMargin.Cli"), "-c", "Release", "-o", program);
            string linkmargin = Path.Combine(program, "linkmargin"), nothing = Path.Combine(folder, "nothing", "empty");
            Run(linkmargin, "demo", "--out", demo);

            string house = Path.Combine(demo, "tern-terrace.yaml");
            (double explain, double beside) = InTurn(
                ExplainRuns,
                () => Run(linkmargin, "explain", house, "--spot", "larder shelf", "--seat", "lounge sofa"),
                () => Run(nothing));
            Line(output, $"explain: {explain:F3} s; the empty program: {beside:F3} s (medians of {ExplainRuns} runs in turn)");
            (double all, double besideAll) = InTurn(DemoRuns, () => Run(linkmargin, "demo", "--out", demo), () => Run(nothing));
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

        return (Median(ones), Median(others));
    }

    private static double Seconds(Action run)
    {
        var watch = Stopwatch.StartNew();
        run();
        return watch.Elapsed.TotalSeconds;
    }

    private static double Median(double[] numbers)
    {
        Array.Sort(numbers);
        return (numbers[(numbers.Length - 1) / 2] + numbers[numbers.Length / 2]) / 2;
    }

    private static void Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> talk = process.StandardError.ReadToEndAsync();
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {said}{talk.Result}");
        }
    }

    private static string Repository()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LinkMargin.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("No LinkMargin.sln above the benchmarks: run them where they were built.");
    }

    private static void Line(TextWriter output, FormattableString text) =>
        output.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
