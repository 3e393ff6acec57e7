using System.Text;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Writing;

/// <summary>Writes files completely or not at all.</summary>
public static class WholeFile
{
    private static readonly UnfinishedFiles Unfinished = new();

    /// <summary>Writes text in UTF-8; see <see cref="Write(string, ReadOnlyMemory{byte}, bool)"/>.</summary>
    public static void Write(string path, string text, bool force)
    {
        ArgumentNullException.ThrowIfNull(text);
        Write(path, Encoding.UTF8.GetBytes(text), force);
    }

    /// <summary>
    /// Writes a file completely or not at all, whatever happens: to a temporary file beside it that then replaces it. Links are
    /// followed and kept; a device or pipe is written to directly.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="content">The whole content.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    /// <exception cref="FileProblemException">It could not be written, or must not be replaced.</exception>
    public static void Write(string path, ReadOnlyMemory<byte> content, bool force) =>
        Write(path, stream => stream.Write(content.Span), content, force);

    /// <summary>The same for content that is too large for memory.</summary>
    /// <param name="path">The file.</param>
    /// <param name="write">Writes the whole content.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    /// <exception cref="FileProblemException">It could not be written, or must not be replaced.</exception>
    public static void Write(string path, Action<Stream> write, bool force) => Write(path, write, content: null, force);

    private static void Write(string path, Action<Stream> write, ReadOnlyMemory<byte>? content, bool force)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(write);
        Guarded(path, () =>
        {
            if (Target(path, content, force) is { } target)
            {
                Replace(target.Place, write, target.Overwrite);
                return;
            }

            using FileStream open = new(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
            write(open);
        });
    }

    /// <summary>
    /// Refuses a file that <see cref="Write(string, ReadOnlyMemory{byte}, bool)"/> could not write, before its content is computed.
    /// A problem that only appears later, such as a full disk, is still reported by the write.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    /// <exception cref="FileProblemException">It could not be written, or must not be replaced.</exception>
    public static void NeedWritable(string path, bool force)
    {
        ArgumentNullException.ThrowIfNull(path);
        Guarded(path, () =>
        {
            if (Target(path, content: null, force) is { } target)
            {
                string beside = Beside(target.Place);
                Unfinished.Create(beside).Dispose();
                Unfinished.Remove(beside);
            }
        });
    }

    // The final place of a file, and whether it replaces an existing one; null for a device or pipe, which is written to directly.
    private static (string Place, bool Overwrite)? Target(string path, ReadOnlyMemory<byte>? content, bool force)
    {
        FileKind kind = SystemFile.KindOf(path);
        if (kind == FileKind.Folder || Path.EndsInDirectorySeparator(path))
        {
            throw new FileProblemException(path, "this is a folder; name a file in it");
        }

        if (kind == FileKind.Disk)
        {
            throw new FileProblemException(path, "this is a disk device; name a file");
        }

        if (kind == FileKind.Stream)
        {
            return null; // it cannot be renamed into place, and must not be replaced by a file
        }

        string place = PlaceOf(path, kind);
        if (!force && kind == FileKind.Regular)
        {
            RefuseUnlessOurs(path, content);
        }

        return (place, kind == FileKind.Regular);
    }

    /// <summary>The place of the file itself: a link is kept, and the file it leads to is written.</summary>
    private static string PlaceOf(string path, FileKind kind)
    {
        string place = LinkedPath.Follow(path);
        if (kind == FileKind.Regular && !SystemFile.IsSame(path, place))
        {
            throw new FileProblemException(path, "this link leads to a file that has no path of its own; name a file");
        }

        return new FileInfo(path).LinkTarget is null || Directory.Exists(Path.GetDirectoryName(place))
            ? place
            : throw new FileProblemException(path, $"this link leads to {place}, whose folder does not exist; create the folder first, or choose another place");
    }

    /// <summary>Makes a folder with its parents, where missing.</summary>
    /// <exception cref="FileProblemException">It could not be made.</exception>
    public static void MakeFolder(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        Guarded(path, () =>
        {
            if (File.Exists(path))
            {
                throw new FileProblemException(path, "this is a file, and a folder is needed; choose another name");
            }

            Directory.CreateDirectory(path);
        });
    }

    /// <summary>Whether two names lead to the same file, by links or otherwise; false for devices and pipes.</summary>
    public static bool AreSame(string one, string other) => SystemFile.IsSame(one, other);

    /// <summary>
    /// Removes every partial file, for a program that must end before its work is done. No file can be written
    /// after this.
    /// </summary>
    public static void Abandon() => Unfinished.RemoveAll();

    /// <summary>Moves new content into a file's place once all of it is on disk; removes it if that fails.</summary>
    /// <param name="place">The file, not a link.</param>
    /// <param name="write">Writes the whole content.</param>
    /// <param name="overwrite">Whether an existing file is replaced, even one that appeared since the check.</param>
    internal static void Replace(string place, Action<Stream> write, bool overwrite)
    {
        string beside = Beside(place);
        try
        {
            using (FileStream stream = Unfinished.Create(beside))
            {
                if (overwrite && !OperatingSystem.IsWindows())
                {
                    File.SetUnixFileMode(stream.SafeFileHandle, File.GetUnixFileMode(place)); // the access rights stay
                }

                write(stream);
                stream.Flush(flushToDisk: true);
            }

            Unfinished.Finish(beside, place, overwrite);
        }
        catch
        {
            Unfinished.Remove(beside);
            throw;
        }
    }

    private static string Beside(string place) => Path.Combine(Path.GetDirectoryName(place) ?? ".", $".{Path.GetRandomFileName()}.part");

    /// <summary>Runs an action and turns an error of the system into a sentence.</summary>
    internal static void Guarded(string path, Action action)
    {
        try
        {
            action();
        }
        catch (DirectoryNotFoundException e)
        {
            throw new FileProblemException(path, "its folder does not exist; create it first, or choose another place", e);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new FileProblemException(path, "you have no permission to write here; choose another place", e);
        }
        catch (IOException e) when (IsFull(e))
        {
            throw new FileProblemException(path, "the disk is full; free some space or choose another place", e);
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException)
        {
            throw new FileProblemException(path, $"this cannot be written: {Quote.Sentence(e.Message)}", e);
        }
    }

    /// <summary>Whether the disk is full (ENOSPC 28) or a quota is used up (EDQUOT 122 on Linux, 69 on macOS; Windows has two codes).</summary>
    private static bool IsFull(IOException e) =>
        OperatingSystem.IsWindows()
            ? (e.HResult & 0xFFFF) is 39 or 112
            : e.HResult == 28 || e.HResult == (OperatingSystem.IsMacOS() ? 69 : 122);

    private static void RefuseUnlessOurs(string path, ReadOnlyMemory<byte>? content)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        Author author = GeneratorMark.AuthorOf(stream);
        if (author == Author.Program || (content is { } same && IsSame(stream, same.Span)))
        {
            return;
        }

        throw new FileProblemException(
            path,
            author == Author.ProgramThenPerson
                ? "this file was changed after LinkMargin wrote it, or an old version wrote it; choose another name, or add --force to replace it"
                : "this file exists, and LinkMargin did not write it or it is a file to edit by hand; choose another name, or add --force to replace it");
    }

    private static bool IsSame(FileStream stream, ReadOnlySpan<byte> content)
    {
        if (stream.Length != content.Length)
        {
            return false;
        }

        byte[] there = new byte[content.Length];
        stream.Position = 0;
        return stream.ReadAtLeast(there, there.Length, throwOnEndOfStream: false) == there.Length && content.SequenceEqual(there);
    }
}

/// <summary>A file could not be written. The message is one sentence for the user.</summary>
public sealed class FileProblemException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="path">The file or folder, as the person named it.</param>
    /// <param name="sentence">What is wrong and what to do.</param>
    /// <param name="cause">The system's error; null if the fault was found without it.</param>
    public FileProblemException(string path, string sentence, Exception? cause = null)
        : base($"{path}: {sentence}", cause)
    {
        Path = path;
    }

    /// <summary>The file or folder, as the person named it.</summary>
    public string Path { get; }
}
