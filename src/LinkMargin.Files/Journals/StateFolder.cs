namespace LinkMargin.Files.Journals;

/// <summary>Where a user's programs keep their state: the XDG base directories on Linux, the system's folder elsewhere.</summary>
public static class StateFolder
{
    private const string Name = "linkmargin";

    /// <summary>This program's folder in it.</summary>
    public static string OfUser()
    {
        if (OperatingSystem.IsWindows() || OperatingSystem.IsMacOS())
        {
            return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), Name);
        }

        string? state = Environment.GetEnvironmentVariable("XDG_STATE_HOME");
        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        return Path.Combine(Path.IsPathRooted(state) ? state : Path.Combine(home, ".local", "state"), Name);
    }
}
