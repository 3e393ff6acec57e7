using System.Diagnostics;
using System.Runtime.InteropServices;

namespace LinkMargin.Cli.Tests.Processes;

/// <summary>The program as a process, started by a shell as a person would: for what only a process has.</summary>
internal static class BuiltProgram
{
    private const int LongestSeconds = 120;

    /// <summary>Starts a shell's script in a folder; <c>"$P"</c> in it is the program.</summary>
    public static Process Start(string folder, string script)
    {
        ProcessStartInfo start = new("/bin/sh", ["-c", script])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["P"] = Path.Combine(AppContext.BaseDirectory, "linkmargin");
        start.Environment["DOTNET_ROOT"] = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", ".."));
        start.Environment["DOTNET_TieredPGO"] = "0"; // none runs long enough to gain by it
        return Process.Start(start)!;
    }

    /// <summary>Runs a script to its end.</summary>
    public static CommandRun Run(string folder, string script)
    {
        using Process process = Start(folder, script);
        return EndOf(process);
    }

    /// <summary>Waits for the end of a script.</summary>
    public static CommandRun EndOf(Process process)
    {
        Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromSeconds(LongestSeconds)))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"It did not end in {LongestSeconds} s.");
        }

        return new CommandRun(process.ExitCode, output.GetAwaiter().GetResult(), CommandRun.OneLineEach(error.GetAwaiter().GetResult()));
    }
}
