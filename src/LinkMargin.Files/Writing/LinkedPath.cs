namespace LinkMargin.Files.Writing;

/// <summary>
/// Follows symbolic links by name, so that a file can be written to where they lead, even if no file exists there yet. The
/// framework's own method resolves a relative link from the folder as written, not from the folder it is really in.
/// </summary>
internal static class LinkedPath
{
    // The limit of Linux.
    private const int MostLinks = 40;

    private static readonly char[] Separators = [Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar];

    /// <summary>The full path with all links resolved.</summary>
    /// <param name="path">A path.</param>
    /// <exception cref="IOException">Its links form a loop.</exception>
    public static string Follow(string path)
    {
        string full = Path.GetFullPath(path);
        string at = Path.GetPathRoot(full) ?? "";
        Stack<string> names = [];
        Push(full[at.Length..]);
        int links = 0;
        while (names.TryPop(out string? name))
        {
            if (name is "." or "..")
            {
                at = name == ".." ? Path.GetDirectoryName(at) ?? at : at;
                continue;
            }

            string next = Path.Combine(at, name);
            if (new FileInfo(next).LinkTarget is not { } target)
            {
                at = next;
                continue;
            }

            if (++links > MostLinks)
            {
                throw new IOException("its symbolic links form a loop");
            }

            string root = Path.GetPathRoot(target) ?? "";
            at = root.Length == 0 ? at : Path.GetPathRoot(Path.GetFullPath(target)) ?? root;
            Push(target[root.Length..]);
        }

        return at;

        void Push(string path)
        {
            foreach (string name in path.Split(Separators, StringSplitOptions.RemoveEmptyEntries).Reverse())
            {
                names.Push(name);
            }
        }
    }
}
