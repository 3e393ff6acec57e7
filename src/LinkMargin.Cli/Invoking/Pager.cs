using System.ComponentModel;
using System.Diagnostics;

namespace LinkMargin.Cli.Invoking;

/// <summary>The program a user reads long texts with, as named by PAGER; the shell runs it, so it may have options.</summary>
/// <param name="command">What the shell is to run.</param>
internal sealed class Pager(string command)
{
    // What shells answer where a program cannot be run or is not there.
    private const int NotRunnable = 126, NotFound = 127;

    private volatile bool isOpen;

    /// <summary>Whether it has the terminal now, and with it Ctrl-C.</summary>
    public bool IsOpen => isOpen;

    /// <summary>The user's pager; null where standard output is no terminal or none is set.</summary>
    public static Pager? OfUser() =>
        !Console.IsOutputRedirected && Environment.GetEnvironmentVariable("PAGER") is { } pager && !string.IsNullOrWhiteSpace(pager)
            ? new Pager(pager)
            : null;

    /// <summary>Shows a text until the user is done with it.</summary>
    /// <returns>Whether the pager could be started.</returns>
    public bool Show(string text)
    {
        ProcessStartInfo start = OperatingSystem.IsWindows() ? new("cmd.exe", ["/c", command]) : new("/bin/sh", ["-c", command]);
        start.RedirectStandardInput = true;
        start.Environment.TryAdd("LESS", "FRX"); // a text that fits the window is shown without waiting, as other programs have it
        isOpen = true;
        try
        {
            using Process process = Process.Start(start)!;
            Send(text, process.StandardInput);
            process.WaitForExit();
            return process.ExitCode is not NotRunnable and not NotFound;
        }
        catch (Win32Exception)
        {
            return false;
        }
        finally
        {
            isOpen = false;
        }
    }

    private static void Send(string text, StreamWriter input)
    {
        try
        {
            using (input)
            {
                input.Write(text);
            }
        }
        catch (IOException)
        {
            // The user has read enough and left before the end.
        }
    }
}
