using System.ComponentModel;
using System.Diagnostics;

namespace LinkMargin.Cli.Invoking;

/// <summary>The program that shows long texts, from PAGER; the shell runs it, so it may have options.</summary>
/// <param name="command">The command line for the shell.</param>
internal sealed class Pager(string command)
{
    // What a shell returns if a program cannot be run or does not exist.
    private const int NotRunnable = 126, NotFound = 127;

    private volatile bool isOpen;

    /// <summary>Whether it has the terminal now, and with it Ctrl-C.</summary>
    public bool IsOpen => isOpen;

    /// <summary>The user's pager; null if standard output is not a terminal or no pager is set.</summary>
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
        start.Environment.TryAdd("LESS", "FRX"); // a text that fits the window is shown without waiting, as in other programs
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
            // The user left before the end of the text.
        }
    }
}
