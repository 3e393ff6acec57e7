using System.ComponentModel;
using System.Diagnostics;

namespace LinkMargin.Cli.Invoking;

/// <summary>The user's browser.</summary>
internal static class Browser
{
    // Absolute paths, so that a program of the same name in the current folder is never run.
    private static readonly string[] OnLinux = ["/usr/bin/xdg-open", "/usr/local/bin/xdg-open", "/bin/xdg-open"];

    /// <summary>Opens an address in it; returns whether a program could be started.</summary>
    public static bool Open(string address)
    {
        try
        {
            ProcessStartInfo? start = OperatingSystem.IsWindows() ? new(address) { UseShellExecute = true }
                : OperatingSystem.IsMacOS() ? new("/usr/bin/open", [address])
                : OnLinux.FirstOrDefault(File.Exists) is { } opener ? new(opener, [address]) { RedirectStandardOutput = true, RedirectStandardError = true }
                : null;
            using Process? process = start is null ? null : Process.Start(start);
            return start is not null;
        }
        catch (Exception fault) when (fault is Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
            return false;
        }
    }
}
