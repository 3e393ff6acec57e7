namespace LinkMargin.Files.Writing;

/// <summary>
/// The files that are being written, so that no partial file is left behind if the program must end early. Safe to use from
/// any thread.
/// </summary>
internal sealed class UnfinishedFiles
{
    private readonly Lock gate = new();
    private readonly HashSet<string> paths = [];
    private bool isOver;

    /// <summary>Makes a new file and remembers it until it is moved into place or removed.</summary>
    /// <exception cref="OperationCanceledException">The program is ending.</exception>
    public FileStream Create(string path)
    {
        lock (gate)
        {
            if (isOver)
            {
                throw new OperationCanceledException();
            }

            FileStream stream = new(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
            paths.Add(path);
            return stream;
        }
    }

    /// <summary>Moves a complete file to its final place.</summary>
    /// <param name="path">The file.</param>
    /// <param name="place">Its final place.</param>
    /// <param name="overwrite">Whether an existing file is replaced.</param>
    public void Finish(string path, string place, bool overwrite)
    {
        File.Move(path, place, overwrite);
        Forget(path);
    }

    /// <summary>Removes a file that could not be finished.</summary>
    public void Remove(string path)
    {
        File.Delete(path);
        Forget(path);
    }

    /// <summary>Removes all of them; no more can be made after that.</summary>
    public void RemoveAll()
    {
        lock (gate)
        {
            isOver = true;
            foreach (string path in paths)
            {
                try
                {
                    File.Delete(path);
                }
                catch (Exception e) when (e is IOException or UnauthorizedAccessException)
                {
                    // The program is ending and cannot report it; the other files must still be removed.
                }
            }
        }
    }

    private void Forget(string path)
    {
        lock (gate)
        {
            paths.Remove(path);
        }
    }
}
