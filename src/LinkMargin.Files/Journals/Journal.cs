using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Journals;

/// <summary>
/// The unsaved changes of a house, written to disk before they are acknowledged. Each line is a checksum and an entry, so that a
/// line cut short by a crash is recognised and ignored; the first line identifies the content of the house file. Only one
/// process can have it open.
/// </summary>
public sealed class Journal : IDisposable
{
    /// <summary>The form of journals.</summary>
    public const string Form = "linkmargin/journal/1";

    // More than anybody tries by hand, yet quickly read.
    private const int MostBytes = 16 * 1024 * 1024;

    private readonly FileStream stream;

    private Journal(FileStream stream, string path, bool isBeside)
    {
        (this.stream, Path, IsBeside) = (stream, path, isBeside);
        Found = Read();
    }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>Whether it is beside the house file.</summary>
    public bool IsBeside { get; }

    /// <summary>What it held when it was opened.</summary>
    public JournalContent Found { get; }

    /// <summary>Opens the journal of a house file: beside it or, if that cannot be written, in a state folder.</summary>
    /// <param name="houseFile">The full path of the house file.</param>
    /// <param name="stateFolder">The folder for this user's program state.</param>
    /// <exception cref="FileProblemException">It cannot be opened anywhere, or another process has it open.</exception>
    public static Journal Open(string houseFile, string stateFolder)
    {
        ArgumentNullException.ThrowIfNull(houseFile);
        string beside = BesideOf(houseFile);
        if (TryOpen(beside) is { } near)
        {
            return new Journal(near, beside, isBeside: true);
        }

        WholeFile.MakeFolder(stateFolder);
        string name = System.IO.Path.GetFileName(houseFile);
        string away = System.IO.Path.Combine(stateFolder, $"{name}-{Hash(Encoding.UTF8.GetBytes(houseFile))[..16]}.journal");
        return TryOpen(away) is { } far
            ? new Journal(far, away, isBeside: false)
            : throw new FileProblemException(away, "no journal can be written here, so your changes could be lost; choose a folder in which you may write");
    }

    /// <summary>The path of a journal beside a house file.</summary>
    public static string BesideOf(string houseFile) => houseFile + ".journal";

    /// <summary>Identifies the content of a house file.</summary>
    public static string Hash(ReadOnlySpan<byte> content) => Convert.ToHexStringLower(SHA256.HashData(content));

    /// <summary>Adds an entry; on disk when it returns.</summary>
    /// <exception cref="FileProblemException">It cannot be written; nothing was added.</exception>
    public void Add(JournalEntry entry) => WholeFile.Guarded(Path, () =>
    {
        long before = stream.Length;
        try
        {
            stream.Seek(0, SeekOrigin.End);
            stream.Write(LineOf(entry));
            stream.Flush(flushToDisk: true);
        }
        catch (IOException)
        {
            stream.SetLength(before);
            throw;
        }
    });

    /// <summary>Starts it again for a new content of the house file, with these entries.</summary>
    public void Restart(string baseHash, IEnumerable<JournalEntry> entries) => WholeFile.Guarded(Path, () =>
    {
        // Built before writing, so that an entry that cannot be serialised does not destroy the journal.
        byte[] content = [.. LineOf(new JournalEntry(JournalEntry.Base) { Hash = baseHash, Form = Form }), .. entries.SelectMany(LineOf)];
        stream.Seek(0, SeekOrigin.Begin);
        stream.Write(content);
        stream.SetLength(content.Length);
        stream.Flush(flushToDisk: true);
    });

    /// <summary>Its whole content on disk, for tests that do not close it.</summary>
    internal byte[] Bytes()
    {
        byte[] bytes = new byte[stream.Length];
        stream.Seek(0, SeekOrigin.Begin);
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>Closes it, and deletes it if it is empty.</summary>
    public void Close(bool isEmpty)
    {
        if (isEmpty)
        {
            File.Delete(Path);
        }

        Dispose();
    }

    /// <inheritdoc/>
    public void Dispose() => stream.Dispose();

    private static FileStream? TryOpen(string path)
    {
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 4096);
        }
        catch (UnauthorizedAccessException)
        {
            return null;
        }
        catch (IOException) when (File.Exists(path))
        {
            throw new FileProblemException(path, "another page has this house open; use that page, or end it first");
        }
        catch (IOException)
        {
            return null;
        }
    }

    private JournalContent Read()
    {
        if (stream.Length > MostBytes)
        {
            return new JournalContent(null, [], IsDamaged: true);
        }

        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        string[] lines = Encoding.UTF8.GetString(bytes).Split('\n');
        List<JournalEntry> entries = [];
        for (int i = 0; i < lines.Length - 1; i++)
        {
            // Entries after a damaged line may depend on it.
            if (EntryOf(lines[i]) is not { } entry)
            {
                return Content(entries, isDamaged: i < lines.Length - 2);
            }

            entries.Add(entry);
        }

        return Content(entries, isDamaged: false);
    }

    private static JournalContent Content(List<JournalEntry> entries, bool isDamaged) =>
        entries is [{ Do: JournalEntry.Base, Form: Form, Hash: { } hash }, .. var rest]
            ? new JournalContent(hash, rest, isDamaged)
            : new JournalContent(null, [], isDamaged || entries.Count > 0);

    private static byte[] LineOf(JournalEntry entry)
    {
        byte[] json = JsonSerializer.SerializeToUtf8Bytes(entry, JournalJson.Default.JournalEntry);
        return [.. Encoding.ASCII.GetBytes(ChecksumOf(json) + " "), .. json, (byte)'\n'];
    }

    private static string ChecksumOf(ReadOnlySpan<byte> json) => GeneratorMark.Checksum(json).ToString("x16", CultureInfo.InvariantCulture);

    private static JournalEntry? EntryOf(string line)
    {
        int blank = line.IndexOf(' ');
        byte[] json = Encoding.UTF8.GetBytes(line[(blank + 1)..]);
        if (blank < 0 || line[..blank] != ChecksumOf(json))
        {
            return null;
        }

        try
        {
            return JsonSerializer.Deserialize(json, JournalJson.Default.JournalEntry);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>The content of a journal.</summary>
/// <param name="BaseHash">The hash of the house file it belongs to; null if unknown.</param>
/// <param name="Entries">Its entries in order.</param>
/// <param name="IsDamaged">Whether part of it cannot be read; the entries before that part are here.</param>
public sealed record JournalContent(string? BaseHash, IReadOnlyList<JournalEntry> Entries, bool IsDamaged);

/// <summary>One entry of a journal.</summary>
/// <param name="Do">What was done: one of the words here.</param>
public sealed record JournalEntry(string Do)
{
    /// <summary>Identifies the content of the house file.</summary>
    public const string Base = "base";

    /// <summary>Something was changed.</summary>
    public const string Change = "change";

    /// <summary>The last change was undone.</summary>
    public const string Undo = "undo";

    /// <summary>An undone change was made again.</summary>
    public const string Redo = "redo";

    /// <summary>The changes of one step.</summary>
    public IReadOnlyList<HouseChange>? Changes { get; init; }

    /// <summary>The hash of the house file.</summary>
    public string? Hash { get; init; }

    /// <summary>The form of the journal.</summary>
    public string? Form { get; init; }
}

/// <summary>Entries as JSON, source-generated for ahead-of-time compilation.</summary>
[JsonSerializable(typeof(JournalEntry))]
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
internal sealed partial class JournalJson : JsonSerializerContext;
