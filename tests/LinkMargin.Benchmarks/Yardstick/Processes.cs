using System.Diagnostics;
using System.Globalization;

namespace LinkMargin.Benchmarks;

/// <summary>Other programs, run to their end.</summary>
internal static class Processes
{
    /// <summary>Runs a program that must succeed: 0, or 1 where a seat does not pass.</summary>
    internal static Finished Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        double processorSeconds = OfChildren();
        var watch = Stopwatch.StartNew();
        using Process process = Process.Start(start)!;
        Task<string> messages = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        double seconds = watch.Elapsed.TotalSeconds;
        return process.ExitCode is 0 or 1
            ? new Finished(output, seconds, OperatingSystem.IsWindows() ? process.TotalProcessorTime.TotalSeconds : OfChildren() - processorSeconds)
            : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {output}{messages.Result}");
    }

    // Processor time of all programs that this one has run to their end, seconds, as Linux keeps it; 0 elsewhere.
    private static double OfChildren()
    {
        const string Account = "/proc/self/stat";
        const int UserTicks = 13, SystemTicks = 14; // of children, counted after the program's name
        const double TicksEachSecond = 100;
        if (!File.Exists(Account))
        {
            return 0;
        }

        string[] fields = File.ReadAllText(Account).Split(')')[^1].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return (double.Parse(fields[UserTicks], CultureInfo.InvariantCulture) + double.Parse(fields[SystemTicks], CultureInfo.InvariantCulture)) / TicksEachSecond;
    }

    /// <summary>The folder of the repository that this program was built in.</summary>
    internal static string Repository()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LinkMargin.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("No LinkMargin.sln above the benchmarks: run them where they were built.");
    }

    /// <summary>The median of some numbers.</summary>
    internal static double Median(IEnumerable<double> numbers)
    {
        double[] ordered = [.. numbers.Order()];
        return (ordered[(ordered.Length - 1) / 2] + ordered[ordered.Length / 2]) / 2;
    }
}

/// <summary>A program that has ended.</summary>
/// <param name="Output">What it printed.</param>
/// <param name="Seconds">How long it took.</param>
/// <param name="ProcessorSeconds">Time of all processors together.</param>
internal sealed record Finished(string Output, double Seconds, double ProcessorSeconds);
