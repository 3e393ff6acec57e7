using System.Text;
using LinkMargin.Engine.Fitting;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Journals;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Writing;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Web.Houses;

/// <summary>The house file as read: its bytes, and the house in them.</summary>
/// <param name="Bytes">The whole file.</param>
/// <param name="Text">The same as text, without a byte order mark.</param>
/// <param name="Loaded">The house; null if the file has errors.</param>
/// <param name="Problems">Errors and warnings, in the words of <c>check</c>.</param>
internal sealed record HouseOnDisk(byte[] Bytes, string Text, LoadedHouse? Loaded, IReadOnlyList<Problem> Problems)
{
    /// <summary>Identifies its content.</summary>
    public string Hash { get; } = Journal.Hash(Bytes);

    /// <summary>Reads it.</summary>
    /// <exception cref="FileProblemException">It cannot be read at all.</exception>
    public static HouseOnDisk Read(HouseSource source)
    {
        byte[] bytes = BytesOf(source.Path);
        return Of(bytes, source);
    }

    /// <summary>The house in some bytes.</summary>
    public static HouseOnDisk Of(byte[] bytes, HouseSource source)
    {
        string text = Encoding.UTF8.GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(Encoding.UTF8.Preamble.Length) : bytes);
        HouseParseResult parsed = HouseFile.Parse(text, source.Typed, source.Tables);
        LoadedHouse? loaded = parsed.House is { } house ? new LoadedHouse(house, parsed.Unit, source.Tables) : null;
        if (loaded is not null && source.Fitted is { } fitted)
        {
            loaded = loaded with { House = fitted.ApplyTo(loaded.House), AsWritten = fitted.ApplyTo(loaded.AsWritten), Fitted = fitted };
        }

        return new HouseOnDisk(bytes, text, loaded, parsed.Problems);
    }

    /// <summary>The bytes of a file, never more than a house file may have.</summary>
    public static byte[] BytesOf(string path)
    {
        try
        {
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            if (stream.Length > HouseFile.MostBytes)
            {
                throw new FileProblemException(path, $"this file is larger than the allowed {HouseFile.MostBytes / (1024 * 1024)} MB");
            }

            byte[] bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return bytes;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new FileProblemException(path, $"this file cannot be read: {Quote.Sentence(fault.Message)}", fault);
        }
    }
}

/// <summary>The file and settings that a house is read with.</summary>
/// <param name="Path">The full path of the file.</param>
/// <param name="Typed">The file as typed, for messages.</param>
/// <param name="Tables">The tables that its names are looked up in.</param>
/// <param name="Fitted">Losses fitted to measurements; null for table losses.</param>
internal sealed record HouseSource(string Path, string Typed, MaterialTables Tables, FittedLosses? Fitted);
