using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Journals;

/// <summary>
/// What was tried with a house and is not saved yet, on disk before anybody hears that it was taken. Each line is an entry behind its
/// checksum, so a line that a crash cut short is known and left out; the first line names the house file's content it belongs to. While it is
/// open nobody else can open it.
/// </summary>
public sealed class Journal : IDisposable
{
    /// <summary>The form of journals.</summary>
    public const string Form = "linkmargin/journal/1";

    // More than anybody tries by hand, and read in a moment.
    private const int MostBytes = 16 * 1024 * 1024;

    private readonly FileStream stream;

    private Journal(FileStream stream, string path, bool isBeside)
    {
        (this.stream, Path, IsBeside) = (stream, path, isBeside);
        Found = Read();
    }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>Whether it stands beside the house file.</summary>
    public bool IsBeside { get; }

    /// <summary>What it held when it was opened.</summary>
    public JournalContent Found { get; }

    /// <summary>Opens the journal of a house file: beside it or, where that cannot be written, in a folder for such things.</summary>
    /// <param name="houseFile">The house file, its whole path.</param>
    /// <param name="stateFolder">The user's folder for what programs keep.</param>
    /// <exception cref="FileProblemException">It cannot be opened anywhere, or somebody has it open.</exception>
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
            : throw new FileProblemException(away, "no journal can be written here, so what is tried could be lost; choose a folder that can be written");
    }

    /// <summary>The journal that stands beside a house file.</summary>
    public static string BesideOf(string houseFile) => houseFile + ".journal";

    /// <summary>What stands for the content of a house file.</summary>
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

    /// <summary>Begins it again for a content of the house file, with these entries.</summary>
    public void Restart(string baseHash, IEnumerable<JournalEntry> entries) => WholeFile.Guarded(Path, () =>
    {
        // Built first: what cannot be written as text must not cost what is there.
        byte[] content = [.. LineOf(new JournalEntry(JournalEntry.Base) { Hash = baseHash, Form = Form }), .. entries.SelectMany(LineOf)];
        stream.Seek(0, SeekOrigin.Begin);
        stream.Write(content);
        stream.SetLength(content.Length);
        stream.Flush(flushToDisk: true);
    });

    /// <summary>All of it as it is on disk, for tests that end without closing it.</summary>
    internal byte[] Bytes()
    {
        byte[] bytes = new byte[stream.Length];
        stream.Seek(0, SeekOrigin.Begin);
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>Closes it; a journal that holds nothing is removed.</summary>
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
            // What follows a damaged line was written after it and may hang on it.
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

/// <summary>What a journal held.</summary>
/// <param name="BaseHash">The content of the house file it belongs to; null where nothing is known.</param>
/// <param name="Entries">Its entries in order.</param>
/// <param name="IsDamaged">Whether something in it cannot be read; what stands before that is here.</param>
public sealed record JournalContent(string? BaseHash, IReadOnlyList<JournalEntry> Entries, bool IsDamaged);

/// <summary>One entry of a journal.</summary>
/// <param name="Do">What was done: one of the words here.</param>
public sealed record JournalEntry(string Do)
{
    /// <summary>The house file has a content.</summary>
    public const string Base = "base";

    /// <summary>Something was changed.</summary>
    public const string Change = "change";

    /// <summary>The last change was taken back.</summary>
    public const string Undo = "undo";

    /// <summary>A change that was taken back was made again.</summary>
    public const string Redo = "redo";

    /// <summary>The changes of one step.</summary>
    public IReadOnlyList<HouseChange>? Changes { get; init; }

    /// <summary>The content of the house file.</summary>
    public string? Hash { get; init; }

    /// <summary>The form of the journal.</summary>
    public string? Form { get; init; }
}

/// <summary>Entries as JSON, for code that is compiled ahead.</summary>
[JsonSerializable(typeof(JournalEntry))]
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
internal sealed partial class JournalJson : JsonSerializerContext;
