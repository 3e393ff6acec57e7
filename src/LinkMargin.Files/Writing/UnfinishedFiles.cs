namespace LinkMargin.Files.Writing;

/// <summary>
/// The files that are being written, so that none is left behind where the program must end before it is whole. Used from
/// any thread.
/// </summary>
internal sealed class UnfinishedFiles
{
    private readonly Lock gate = new();
    private readonly HashSet<string> paths = [];
    private bool isOver;

    /// <summary>Makes a file that is not there yet and remembers it until it is put in place or removed.</summary>
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

    /// <summary>Puts a whole file in its place.</summary>
    /// <param name="path">The file.</param>
    /// <param name="place">Where it belongs.</param>
    /// <param name="overwrite">Whether a file that is there is replaced.</param>
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

    /// <summary>Removes all of them; none is made any more.</summary>
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
                    // The program is ending and cannot say so; the others are still to be removed.
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
