using System.Text;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Writing;

/// <summary>Writes files whole or not at all.</summary>
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
    /// Writes a file so that it is there whole or not at all, whatever happens on the way: to a file beside it that then
    /// takes its place. Links are followed and stay; what is a device or pipe is written to as it is.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="content">All of it.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    /// <exception cref="FileProblemException">It could not be written, or must not be replaced.</exception>
    public static void Write(string path, ReadOnlyMemory<byte> content, bool force) =>
        Write(path, stream => stream.Write(content.Span), content, force);

    /// <summary>The same for content too large to hold at once.</summary>
    /// <param name="path">The file.</param>
    /// <param name="write">Writes all of it.</param>
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
    /// Refuses a file that <see cref="Write(string, ReadOnlyMemory{byte}, bool)"/> could not write, before the work whose result it
    /// takes. What is found full or forbidden only later is still said then.
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

    // Where a file is put in place, and whether one is there that is replaced; null for what is written to as it is.
    private static (string Place, bool Overwrite)? Target(string path, ReadOnlyMemory<byte>? content, bool force)
    {
        FileKind kind = SystemFile.KindOf(path);
        if (kind == FileKind.Folder || Path.EndsInDirectorySeparator(path))
        {
            throw new FileProblemException(path, "this is a folder; name a file in it");
        }

        if (kind == FileKind.Disk)
        {
            throw new FileProblemException(path, "this is a whole disk; name a file");
        }

        if (kind == FileKind.Stream)
        {
            return null; // it cannot be put in place by renaming, and must not be replaced by a file
        }

        string place = PlaceOf(path, kind);
        if (!force && kind == FileKind.Regular)
        {
            RefuseUnlessOurs(path, content);
        }

        return (place, kind == FileKind.Regular);
    }

    /// <summary>Where the file itself is or belongs: a link stays a link, and what it leads to is written.</summary>
    private static string PlaceOf(string path, FileKind kind)
    {
        string place = LinkedPath.Follow(path);
        if (kind == FileKind.Regular && !SystemFile.IsSame(path, place))
        {
            throw new FileProblemException(path, "this leads to a file that has no name of its own; name a file");
        }

        return new FileInfo(path).LinkTarget is null || Directory.Exists(Path.GetDirectoryName(place))
            ? place
            : throw new FileProblemException(path, $"this leads to {place}, whose folder does not exist; make it first or choose another place");
    }

    /// <summary>Makes a folder and those above it, if they are not there.</summary>
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

    /// <summary>Whether two names lead to one file, by links or otherwise; devices and pipes are none.</summary>
    public static bool AreSame(string one, string other) => SystemFile.IsSame(one, other);

    /// <summary>
    /// Removes every file that is only half there; for a program that must end before its work is done. No file is written
    /// after this.
    /// </summary>
    public static void Abandon() => Unfinished.RemoveAll();

    /// <summary>Puts what is written in a file's place once all of it is on the disk; removes it where that fails.</summary>
    /// <param name="place">The file, no link.</param>
    /// <param name="write">Writes all of it.</param>
    /// <param name="overwrite">Whether a file that is there is replaced; it may have come since that was looked at.</param>
    internal static void Replace(string place, Action<Stream> write, bool overwrite)
    {
        string beside = Beside(place);
        try
        {
            using (FileStream stream = Unfinished.Create(beside))
            {
                if (overwrite && !OperatingSystem.IsWindows())
                {
                    File.SetUnixFileMode(stream.SafeFileHandle, File.GetUnixFileMode(place)); // who may read it stays
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

    /// <summary>Runs an action and turns what the system says into a sentence.</summary>
    internal static void Guarded(string path, Action action)
    {
        try
        {
            action();
        }
        catch (DirectoryNotFoundException e)
        {
            throw new FileProblemException(path, "its folder does not exist; make it first or choose another place", e);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new FileProblemException(path, "there is no permission to write here; choose another place", e);
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

    /// <summary>No space (ENOSPC 28), quota used up (EDQUOT 122 on Linux, 69 on macOS), or Windows' own two codes.</summary>
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
                ? "somebody changed this file since LinkMargin wrote it, or an old version wrote it; choose another name, or --force to replace it"
                : "this file exists and LinkMargin did not write it, or somebody edits it by hand; choose another name, or --force to replace it");
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
