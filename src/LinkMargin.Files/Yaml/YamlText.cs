using System.Text;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Yaml;

/// <summary>Gets the text of a file, or reports why it cannot. Never reads more than the limit.</summary>
internal static class YamlText
{
    private static readonly Mark Start = new(1, 1);

    /// <summary>Reads a file; null, with an error recorded, if that is not possible.</summary>
    public static string? Read(string path, Source source)
    {
        byte[]? bytes = ReadBytes(path, source);
        return bytes is null ? null : Decode(bytes, source);
    }

    /// <summary>Decodes bytes; null, with an error recorded, if they are not UTF-8.</summary>
    public static string? Decode(ReadOnlySpan<byte> bytes, Source source)
    {
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            source.Error(Start, "this file is in UTF-16; save it as UTF-8");
            return null;
        }

        if (bytes is [0xEF, 0xBB, 0xBF, ..])
        {
            bytes = bytes[3..];
        }

        if (FirstBadByte(bytes) is { } bad)
        {
            source.Error(MarkOf(bytes[..bad]),
                "a character here is not UTF-8, so this is not a text file or was saved in an older encoding; save it as UTF-8");
            return null;
        }

        return Encoding.UTF8.GetString(bytes);
    }

    private static byte[]? ReadBytes(string path, Source source)
    {
        if (Directory.Exists(path))
        {
            source.Error(Start, "this is a folder; name a file in it");
            return null;
        }

        try
        {
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            if (stream.CanSeek && stream.Length > YamlLimits.Bytes)
            {
                source.Error(Start, TooLarge(source));
                return null;
            }

            // A device or pipe has no known length, so the limit is also checked while reading.
            byte[] buffer = new byte[stream.CanSeek && stream.Length > 0 ? stream.Length + 1 : YamlLimits.Bytes + 1];
            int count = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
            if (count > YamlLimits.Bytes)
            {
                source.Error(Start, TooLarge(source));
                return null;
            }

            return buffer[..count];
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            source.Error(Start, "there is no such file; check the name and the folder");
        }
        catch (UnauthorizedAccessException)
        {
            source.Error(Start, "there is no permission to read this file");
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException)
        {
            source.Error(Start, $"this file cannot be read: {Quote.Sentence(e.Message)}");
        }

        return null;
    }

    private static string TooLarge(Source source) =>
        FormattableString.Invariant($"this file is larger than {YamlLimits.Bytes / (1024 * 1024)} MB; {source.Usual}");

    /// <summary>Position of the first byte that cannot be part of a text: invalid UTF-8, or a zero byte.</summary>
    private static int? FirstBadByte(ReadOnlySpan<byte> bytes)
    {
        int zero = bytes.IndexOf((byte)0);
        if (System.Text.Unicode.Utf8.IsValid(bytes))
        {
            return zero < 0 ? null : zero;
        }

        int at = 0;
        while (at < bytes.Length && at != zero
            && Rune.DecodeFromUtf8(bytes[at..], out _, out int used) == System.Buffers.OperationStatus.Done)
        {
            at += used;
        }

        return at;
    }

    private static Mark MarkOf(ReadOnlySpan<byte> before)
    {
        int lineStart = before.LastIndexOf((byte)'\n') + 1;
        return new Mark(before.Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(before[lineStart..]) + 1);
    }
}

/// <summary>Limits for the size of a file. A house of a thousand walls stays far below each.</summary>
internal static class YamlLimits
{
    /// <summary>Bytes in a file.</summary>
    public const int Bytes = 4 * 1024 * 1024;

    /// <summary>Nesting depth of lists and groups.</summary>
    public const int Depth = 32;

    /// <summary>Values of any kind, including keys.</summary>
    public const int Nodes = 200_000;
}
