using System.Text;
using LinkMargin.Files.Writing;

namespace LinkMargin.Cli.Invoking;

/// <summary>
/// The files of one run. It never overwrites a file that it has read or written, whatever name is requested: otherwise a
/// picture could replace its own house.
/// </summary>
/// <param name="folder">The folder that relative paths start from; empty for the process's own.</param>
internal sealed class RunFiles(string folder)
{
    private readonly List<string> read = [];
    private readonly List<string> written = [];

    /// <summary>The path of a file to read.</summary>
    /// <param name="typed">The file as typed; left unchanged where possible, since messages name it.</param>
    public string ToRead(string typed)
    {
        read.Add(typed);
        return PathOf(typed);
    }

    /// <summary>The path of a folder from which some files are read.</summary>
    /// <param name="typed">The folder as typed.</param>
    /// <param name="names">The names of the files, which may or may not exist.</param>
    public string ToReadFolder(string typed, IEnumerable<string> names)
    {
        read.AddRange(names.Select(name => Path.Combine(typed, name)));
        return PathOf(typed);
    }

    /// <summary>Makes a folder for output, with its parents.</summary>
    public void MakeFolder(string typed) => WholeFile.MakeFolder(PathOf(typed));

    /// <summary>Refuses a file that could not be written, before its content is computed.</summary>
    /// <param name="typed">The file as typed; null if none is requested.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public void NeedWritable(string? typed, bool force)
    {
        if (typed is not null)
        {
            RefuseIfInUse(typed);
            WholeFile.NeedWritable(PathOf(typed), force);
        }
    }

    /// <summary>Writes a text in UTF-8.</summary>
    /// <inheritdoc cref="WholeFile.Write(string, string, bool)"/>
    public void Write(string typed, string text, bool force) => Write(typed, Encoding.UTF8.GetBytes(text), force);

    /// <inheritdoc cref="WholeFile.Write(string, ReadOnlyMemory{byte}, bool)"/>
    public void Write(string typed, ReadOnlyMemory<byte> content, bool force)
    {
        RefuseIfInUse(typed);
        WholeFile.Write(PathOf(typed), content, force);
        written.Add(typed);
    }

    /// <inheritdoc cref="WholeFile.Write(string, Action{Stream}, bool)"/>
    public void Write(string typed, Action<Stream> write, bool force)
    {
        RefuseIfInUse(typed);
        WholeFile.Write(PathOf(typed), write, force);
        written.Add(typed);
    }

    private void RefuseIfInUse(string typed)
    {
        string path = PathOf(typed);
        if (read.Find(other => WholeFile.AreSame(path, PathOf(other))) is { } input)
        {
            throw new FileProblemException(path, $"this run reads the file '{input}', so not even --force replaces it; choose another name");
        }

        if (written.Find(other => WholeFile.AreSame(path, PathOf(other))) is { } output)
        {
            throw new FileProblemException(path, $"this run has just written the file '{output}'; give each file its own name");
        }
    }

    private string PathOf(string typed) => Path.Combine(folder, typed);
}
