namespace LinkMargin.Files.Writing;

/// <summary>A file could not be written. The message is one sentence, fit to print.</summary>
public sealed class FileProblemException : Exception
{
    /// <summary>Makes one.</summary>
    /// <param name="path">The file or folder, as the person named it.</param>
    /// <param name="sentence">What is wrong and what to do.</param>
    /// <param name="cause">What the system said; null where the fault was found before asking it.</param>
    public FileProblemException(string path, string sentence, Exception? cause = null)
        : base($"{path}: {sentence}", cause)
    {
        Path = path;
    }

    /// <summary>The file or folder, as the person named it.</summary>
    public string Path { get; }
}
