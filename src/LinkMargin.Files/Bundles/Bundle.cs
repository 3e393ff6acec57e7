using System.IO.Compression;
using System.Text;
using System.Text.Json;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Writing;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Bundles;

/// <summary>
/// Everything about a house in one archive (ZIP, PKWARE's APPNOTE): the house file, the tables used, fitted losses, measurements
/// and the report. It is never unpacked into a folder.
/// </summary>
public sealed record Bundle
{
    /// <summary>The form of bundles.</summary>
    public const string Form = "linkmargin/bundle/1";

    /// <summary>The largest archive, and the most that all its files may hold together, bytes.</summary>
    public const long MostBytes = 64L * 1024 * 1024;

    /// <summary>The most files in a bundle.</summary>
    public const int MostFiles = 50;

    private const string ContentsName = "contents.json", FittedName = "fitted.yaml", MeasurementsName = "measurements.csv", TablesFolder = "tables/";

    // The earliest time of the ZIP format, so that the same files give the same archive.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>The name of the house file.</summary>
    public required string HouseName { get; init; }

    /// <summary>The house file.</summary>
    public required byte[] House { get; init; }

    /// <summary>The tables' files by name; a missing file means the built-in table.</summary>
    public IReadOnlyDictionary<string, string> Tables { get; init; } = new Dictionary<string, string>();

    /// <summary>The file of fitted losses; null for none.</summary>
    public byte[]? Fitted { get; init; }

    /// <summary>The file of measurements; null for none.</summary>
    public byte[]? Measurements { get; init; }

    /// <summary>The report, by its name; null for none.</summary>
    public (string Name, byte[] Content)? Report { get; init; }

    /// <summary>Whether a file is a ZIP archive, by its first bytes; false if it cannot be read.</summary>
    public static bool IsAt(string path)
    {
        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            Span<byte> head = stackalloc byte[4];
            return file.CanSeek && file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false) == head.Length && head.SequenceEqual("PK\x03\x04"u8);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return false;
        }
    }

    /// <summary>Reads a bundle.</summary>
    /// <param name="path">The archive, as the person named it.</param>
    /// <exception cref="BundleFaultException">It is damaged, or holds something that is not allowed.</exception>
    public static Bundle Read(string path)
    {
        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            if (file.Length > MostBytes)
            {
                throw new BundleFaultException(path, FormattableString.Invariant($"this archive is larger than the allowed {MostBytes / 1024} KiB: it has {file.Length / 1024} KiB"));
            }

            using var archive = new ZipArchive(file, ZipArchiveMode.Read);
            return Read(path, archive);
        }
        catch (InvalidDataException)
        {
            throw new BundleFaultException(path, "this archive is damaged or encrypted; write it again with 'linkmargin report --bundle'");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BundleFaultException(path, $"this archive cannot be read: {Quote.Sentence(fault.Message)}");
        }
    }

    /// <summary>Writes it; the same content always gives the same bytes.</summary>
    public void Write(Stream output)
    {
        using var archive = new ZipArchive(output, ZipArchiveMode.Create, leaveOpen: true);
        Add(ContentsName, Contents(), CompressionLevel.NoCompression); // first and uncompressed: the program recognises its own archives by it
        Add(HouseName, House);
        foreach ((string name, string text) in Tables.OrderBy(table => table.Key, StringComparer.Ordinal))
        {
            Add(TablesFolder + name, Encoding.UTF8.GetBytes(text));
        }

        if (Fitted is { } fitted)
        {
            Add(FittedName, fitted);
        }

        if (Measurements is { } measurements)
        {
            Add(MeasurementsName, measurements);
        }

        if (Report is { } report)
        {
            Add(report.Name, report.Content);
        }

        void Add(string name, byte[] content, CompressionLevel level = CompressionLevel.Optimal)
        {
            ZipArchiveEntry entry = archive.CreateEntry(name, level);
            entry.LastWriteTime = NoTime;
            using Stream stream = entry.Open();
            stream.Write(content);
        }
    }

    private static Bundle Read(string path, ZipArchive archive)
    {
        if (archive.Entries.Count > MostFiles)
        {
            throw new BundleFaultException(path, FormattableString.Invariant($"this archive holds {archive.Entries.Count} files, more than the allowed {MostFiles}"));
        }

        HashSet<string> names = new(StringComparer.OrdinalIgnoreCase);
        foreach (ZipArchiveEntry entry in archive.Entries)
        {
            if (LeavesFolder(entry.FullName))
            {
                throw new BundleFaultException(path, $"the path {Quote.Of(entry.FullName)} in this archive leads outside the archive, so the archive was not opened");
            }

            if (!names.Add(entry.FullName))
            {
                throw new BundleFaultException(path, $"this archive holds {Quote.Of(entry.FullName)} twice; write it again with 'linkmargin report --bundle'");
            }
        }

        if (archive.Entries.Sum(entry => entry.Length) > MostBytes)
        {
            throw new BundleFaultException(path, FormattableString.Invariant($"unpacked, this archive would be larger than the allowed {MostBytes / 1024} KiB, so it was not opened"));
        }

        ZipArchiveEntry[] houses = [.. archive.Entries.Where(entry => IsHouse(entry.FullName))];
        if (houses.Length != 1)
        {
            throw new BundleFaultException(path, houses.Length == 0
                ? "this archive holds no house file; a bundle has one .yaml file beside its folders"
                : $"this archive holds {houses.Length} house files ({string.Join(", ", houses.Select(house => Quote.Of(house.FullName)))}); a bundle has one");
        }

        return new Bundle
        {
            HouseName = houses[0].FullName,
            House = Unpacked(path, houses[0]),
            Tables = MaterialTablesFile.FileNames
                .Select(name => (Name: name, Entry: archive.GetEntry(TablesFolder + name)))
                .Where(table => table.Entry is not null)
                .ToDictionary(table => table.Name, table => Text(path, table.Entry!)),
            Fitted = archive.GetEntry(FittedName) is { } fitted ? Unpacked(path, fitted) : null,
            Measurements = archive.GetEntry(MeasurementsName) is { } measurements ? Unpacked(path, measurements) : null,
        };
    }

    private static bool IsHouse(string name) =>
        !name.Contains('/', StringComparison.Ordinal) && name != FittedName
        && (name.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || name.EndsWith(".yml", StringComparison.OrdinalIgnoreCase));

    private static bool LeavesFolder(string name) =>
        name.Length == 0 || name[0] == '/' || name.Contains('\\', StringComparison.Ordinal) || name.Contains(':', StringComparison.Ordinal)
        || name.Contains('\0', StringComparison.Ordinal) || name.Split('/').Contains("..");

    private static string Text(string path, ZipArchiveEntry entry)
    {
        byte[] bytes = Unpacked(path, entry);
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            throw new BundleFaultException(path, $"{Quote.Of(entry.FullName)} in this archive is not UTF-8 text; write the archive again with 'linkmargin report --bundle'");
        }
    }

    // The size stated in an archive may be false, so the limit is also checked while unpacking.
    private static byte[] Unpacked(string path, ZipArchiveEntry entry)
    {
        using Stream stream = entry.Open();
        byte[] buffer = new byte[Math.Min(entry.Length, YamlLimits.Bytes) + 1];
        int count = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        return count < buffer.Length
            ? buffer[..count]
            : throw new BundleFaultException(path, FormattableString.Invariant($"{Quote.Of(entry.FullName)} in this archive is larger than the allowed {YamlLimits.Bytes / 1024} KiB, or larger than the archive states"));
    }

    private byte[] Contents()
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("form", Form);
            json.WriteString(GeneratorMark.JsonMember, GeneratorMark.Name);
            json.WriteString("house", HouseName);
            json.WriteEndObject();
        }

        return [.. bytes.ToArray(), (byte)'\n'];
    }
}

/// <summary>An archive cannot be opened. The message is one sentence for the user.</summary>
/// <param name="path">The archive, as the person named it.</param>
/// <param name="sentence">What is wrong and what to do.</param>
public sealed class BundleFaultException(string path, string sentence) : Exception($"{path}: {sentence}");
