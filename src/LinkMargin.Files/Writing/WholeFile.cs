using System.Text;

namespace LinkMargin.Files.Writing;

/// <summary>Writes files whole or not at all.</summary>
public static class WholeFile
{
    /// <summary>Writes text in UTF-8; see <see cref="Write(string, ReadOnlyMemory{byte}, bool)"/>.</summary>
    public static void Write(string path, string text, bool force)
    {
        ArgumentNullException.ThrowIfNull(text);
        Write(path, Encoding.UTF8.GetBytes(text), force);
    }

    /// <summary>
    /// Writes a file so that it is there whole or not at all, whatever happens on the way: to a file beside it that then
    /// takes its place.
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
            if (Directory.Exists(path))
            {
                throw new FileProblemException(path, "this is a folder; name a file in it");
            }

            if (IsDevice(path))
            {
                // A device cannot be put in place by renaming, and must not be replaced by a file.
                using FileStream device = new(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
                write(device);
                return;
            }

            if (!force && File.Exists(path) && !MayReplace(path, content))
            {
                throw new FileProblemException(
                    path, "this file is there already and LinkMargin did not write it, or somebody changes it by hand; choose another name, or --force to replace it");
            }

            Replace(path, write);
        });
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

    /// <summary>Puts what is written in a file's place once all of it is on the disk; removes it where that fails.</summary>
    internal static void Replace(string path, Action<Stream> write)
    {
        string full = Path.GetFullPath(path);
        string beside = Path.Combine(Path.GetDirectoryName(full) ?? ".", $".{Path.GetRandomFileName()}.part");
        try
        {
            using (FileStream stream = new(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }

            File.Move(beside, full, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }

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
            throw new FileProblemException(path, $"this cannot be written: {e.Message.ReplaceLineEndings(" ").TrimEnd('.')}", e);
        }
    }

    /// <summary>No space (ENOSPC 28), quota used up (EDQUOT 122 on Linux, 69 on macOS), or Windows' own two codes.</summary>
    private static bool IsFull(IOException e) =>
        OperatingSystem.IsWindows()
            ? (e.HResult & 0xFFFF) is 39 or 112
            : e.HResult == 28 || e.HResult == (OperatingSystem.IsMacOS() ? 69 : 122);

    private static bool IsDevice(string path) =>
        !OperatingSystem.IsWindows() && Path.GetFullPath(path).StartsWith("/dev/", StringComparison.Ordinal);

    private static bool MayReplace(string path, ReadOnlyMemory<byte>? content)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        byte[] head = new byte[GeneratorMark.HeadBytes];
        int count = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        return GeneratorMark.IsOn(head.AsSpan(0, count))
            || (content is { } same && stream.Length == same.Length && File.ReadAllBytes(path).AsSpan().SequenceEqual(same.Span));
    }
}
