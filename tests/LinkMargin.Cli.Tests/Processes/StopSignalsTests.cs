using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using LinkMargin.Cli.Invoking;

namespace LinkMargin.Cli.Tests.Processes;

/// <summary>Asked once to stop, any command ends, whatever it is at, and leaves nothing half written.</summary>
public sealed class StopSignalsTests : IDisposable
{
    private const int Interrupt = 2, Terminate = 15;

    // The program takes less than a second, and five when everything hangs; a machine with much else to do takes longer to let it.
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(30);

    private readonly ScratchFolder folder = new();

    public StopSignalsTests()
    {
        folder.Put("house.yaml", SampleFile.Modest);
        Directory.CreateDirectory(folder.PathOf("tables"));
    }

    public void Dispose() => folder.Dispose();

    /// <summary>Each command, waiting for a named pipe that nobody opens at the other end.</summary>
    public static TheoryData<string, string> Waiting { get; } = new()
    {
        { "check pipe", "pipe" },
        { "explain pipe", "pipe" },
        { "compare pipe", "pipe" },
        { "fit pipe", "pipe" },
        { "fit house.yaml pipe", "pipe" },
        { "place pipe", "pipe" },
        { "improve pipe", "pipe" },
        { "map pipe", "pipe" },
        { "compare house.yaml --fitted pipe", "pipe" },
        { "compare house.yaml --model direct --plot pipe", "pipe" },
        { "new pipe", "pipe" },
        { "materials --materials tables", "tables/materials.yaml" },
        { "demo --materials tables", "tables/materials.yaml" },
    };

    [Fact]
    public void The_program_itself_takes_less_than_a_second_and_five_where_everything_hangs()
    {
        Assert.InRange(StopSignals.Grace.TotalSeconds, 0, 0.5);
        Assert.InRange((StopSignals.Grace + StopSignals.LastStep + StopSignals.LastStep).TotalSeconds, 0, 5);
    }

    [UnixTheory]
    [MemberData(nameof(Waiting))]
    public void A_command_that_waits_for_a_pipe_ends(string command, string pipe)
    {
        Make(pipe);
        IReadOnlyList<string> before = folder.Files;
        Assert.Equal(143, Stop(command, Terminate).ExitCode);
        Assert.Equal(before, folder.Files);
    }

    [UnixTheory]
    [InlineData(Interrupt, 130)]
    [InlineData(Terminate, 143)]
    public void Both_signals_have_the_exit_code_that_shells_give_them_and_say_why(int signal, int exitCode)
    {
        if (signal == Interrupt && IsIgnored(Interrupt))
        {
            return; // as whoever runs the tests in the background has it; the program keeps to that
        }

        Make("pipe");
        CommandRun run = Stop("check pipe", signal);
        Assert.Equal(exitCode, run.ExitCode);
        Assert.Equal($"linkmargin: {CommandLineProgram.Stopped}\n", run.Error);
    }

    [UnixTheory]
    [InlineData("map house.yaml --cell 0.01 --out maps")]
    [InlineData("place house.yaml --grid 0.05")]
    [InlineData("compare crowd.yaml")]
    [InlineData("improve crowd.yaml")]
    [InlineData("fit crowd.yaml --where-next")]
    public void A_command_that_computes_for_long_ends(string command)
    {
        folder.Put("crowd.yaml", Crowd());
        CommandRun run = Stop(command, Terminate);
        Assert.Equal(143, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Equal(["crowd.yaml", "house.yaml"], folder.Files);
    }

    [UnixTheory]
    [InlineData("--csv")]
    [InlineData("--geojson")]
    public void A_file_that_is_half_written_is_removed(string numbers)
    {
        Directory.CreateDirectory(folder.PathOf("maps"));
        using Process process = BuiltProgram.Start(folder.Path, $"exec \"$P\" map house.yaml --model direct --spot 'den rack' --cell 0.02 --out maps {numbers}");
        Task<CommandRun> end = Task.Run(() => BuiltProgram.EndOf(process));
        while (!end.IsCompleted && !Directory.EnumerateFiles(folder.PathOf("maps"), "*.part").Any())
        {
            Thread.Sleep(1);
        }

        Assert.False(end.IsCompleted, "It was done before it was asked to stop.");
        Send(process, Terminate);
        Assert.True(end.Wait(Limit));
        Assert.Equal(143, end.Result.ExitCode);
        Assert.DoesNotContain(folder.Files, file => file.EndsWith(".part", StringComparison.Ordinal));
    }

    private CommandRun Stop(string command, int signal)
    {
        using Process process = BuiltProgram.Start(folder.Path, $"exec \"$P\" {command}");
        Task<CommandRun> end = Task.Run(() => BuiltProgram.EndOf(process));
        WaitUntilCaught(process, signal);
        Thread.Sleep(500); // to get to what it is to be stopped at
        Assert.False(end.IsCompleted, "It was done before it was asked to stop.");
        Send(process, signal);
        Assert.True(end.Wait(Limit), $"It did not end in {Limit.TotalSeconds} s.");
        return end.Result;
    }

    // Until the program has begun to listen, the signal ends it as it ends any program, and nothing is shown.
    private static void WaitUntilCaught(Process process, int signal)
    {
        string status = $"/proc/{process.Id}/status";
        for (var waited = Stopwatch.StartNew(); File.Exists(status) && waited.Elapsed < Limit && !Has(status, "SigCgt:", signal);)
        {
            Thread.Sleep(20);
        }
    }

    private static bool IsIgnored(int signal) => File.Exists("/proc/self/status") && Has("/proc/self/status", "SigIgn:", signal);

    private static bool Has(string status, string set, int signal)
    {
        string line = File.ReadLines(status).First(l => l.StartsWith(set, StringComparison.Ordinal));
        return ((ulong.Parse(line[set.Length..], NumberStyles.HexNumber | NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture) >> (signal - 1)) & 1) == 1;
    }

    private void Make(string pipe) => Assert.Equal(0, BuiltProgram.Run(folder.Path, $"mkfifo {pipe}").ExitCode);

    // At once: a shell that is started first would send it when a short file is whole.
    private static void Send(Process process, int signal) => Assert.Equal(0, kill(process.Id, signal));

    [SuppressMessage("Style", "IDE1006:Naming styles", Justification = "The name in the C library.")]
    [SuppressMessage("Interoperability", "SYSLIB1054:Use LibraryImport", Justification = "That needs unsafe code; two numbers need no marshalling.")]
    [DllImport("libc")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int kill(int process, int signal);

    // Many more links than can be computed while the test waits.
    private static string Crowd()
    {
        StringBuilder text = new(SampleFile.Modest[..SampleFile.Modest.IndexOf("spots:", StringComparison.Ordinal)]);
        text.Append("spots:\n");
        for (int i = 0; i < 60; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - {{name: spot {i}, level: loft, at: [{0.5 + (0.1 * i):0.0}, {(i % 2 == 0 ? 0.5 : 4.5):0.0}, 1.1]}}\n");
        }

        text.Append("seats:\n");
        for (int i = 0; i < 60; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - {{name: seat {i}, level: den, at: [{0.5 + (0.5 * (i % 6)):0.0}, {0.5 + (0.4 * (i / 6)):0.0}], hands: 0.7, required: 15 dB}}\n");
        }

        return text.ToString();
    }
}
