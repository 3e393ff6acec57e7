using System.Globalization;
using System.Text;

namespace LinkMargin.Benchmarks.Mutations;

/// <summary>Spoils a file in one to six ways, as slips, broken disks and ill will do; the same seed spoils it the same.</summary>
internal sealed class Mutator(int seed)
{
    private const int MostSteps = 6;

    // A list longer than this only takes time to make: readers refuse far shorter files.
    private const int LongestRun = 300_000;

    private static readonly string[] Numbers =
    [
        "0", "-0", "1e308", "-1e308", "1e-320", "1e999", "NaN", ".nan", ".inf", "-.inf", "Infinity", "2147483648", "-2147483649",
        "9223372036854775808", "0x7fffffff", "0.0000000000000000000000001", "1e-9", "1000", "-1000", "1_000", "1,5", "٣",
        "12ft 6in", "1e308 ft", "99999999999999999999999999999999999999999999", "+", "-", "1/0 in", "1.", ".5",
    ];

    private static readonly string[] Words =
    [
        "null", "~", "true", "[]", "{}", "''", "\"\"", "\"\\u202e\"", "\"\\ud800\"", "\"\\0\"", "\"\\x1b[2J\"", "é", "e\u0301", "\u200b", "\u2028",
        "\ufeff", "\u0000", "\u0085", "👨\u200d👩", "=1+1", "'", "\"", "outside", "north", "front", "|", ">-", "!!binary x", "!x y", "%YAML 9.9",
        "---", "...", "? ", ": ", "- ", "&a ", "*a", "<<: *a", "#", "@", "`", "\t", "\r", "sep=;", ";", ",",
    ];

    private readonly Random random = new(seed);

    /// <summary>The bytes, spoilt.</summary>
    public byte[] Spoil(byte[] valid)
    {
        byte[] bytes = valid;
        for (int steps = random.Next(1, MostSteps + 1); steps > 0; steps--)
        {
            bytes = Step(bytes);
        }

        return bytes;
    }

    private byte[] Step(byte[] bytes) => random.Next(100) switch
    {
        < 14 => Flipped(bytes),
        < 24 => Without(bytes),
        < 32 => With(bytes, [.. Enumerable.Range(0, random.Next(1, 9)).Select(_ => (byte)random.Next(256))]),
        < 42 => With(bytes, Encoding.UTF8.GetBytes(Words[random.Next(Words.Length)])),
        < 62 => WithNumber(bytes),
        < 70 => Lines(bytes, Doubled),
        < 78 => Lines(bytes, Moved),
        < 84 => Lines(bytes, Indented),
        < 92 => Lines(bytes, WithValue),
        < 94 => With(bytes, Nest()),
        < 96 => Bomb(bytes),
        < 97 => With(bytes, Run()),
        _ => bytes[..random.Next(bytes.Length + 1)],
    };

    private byte[] Flipped(byte[] bytes)
    {
        byte[] changed = [.. bytes];
        for (int i = random.Next(1, 5); i > 0 && changed.Length > 0; i--)
        {
            changed[random.Next(changed.Length)] ^= (byte)(1 << random.Next(8));
        }

        return changed;
    }

    private byte[] Without(byte[] bytes)
    {
        int from = random.Next(bytes.Length + 1), length = Math.Min(bytes.Length - from, random.Next(1, 60));
        return [.. bytes[..from], .. bytes[(from + length)..]];
    }

    private byte[] With(byte[] bytes, byte[] more)
    {
        int at = random.Next(bytes.Length + 1);
        return [.. bytes[..at], .. more, .. bytes[at..]];
    }

    private byte[] WithNumber(byte[] bytes)
    {
        int[] starts = [.. Enumerable.Range(0, bytes.Length).Where(i => IsDigit(bytes[i]) && (i == 0 || !IsDigit(bytes[i - 1])))];
        if (starts.Length == 0)
        {
            return bytes;
        }

        int from = starts[random.Next(starts.Length)], to = from;
        while (to < bytes.Length && IsDigit(bytes[to]))
        {
            to++;
        }

        string number = random.Next(3) switch
        {
            0 => Numbers[random.Next(Numbers.Length)],
            1 => (random.NextDouble() * Math.Pow(10, random.Next(-6, 9))).ToString("R", CultureInfo.InvariantCulture),
            _ => random.Next(-20, 20).ToString(CultureInfo.InvariantCulture),
        };
        return [.. bytes[..from], .. Encoding.UTF8.GetBytes(number), .. bytes[to..]];
    }

    private static bool IsDigit(byte b) => b is (>= (byte)'0' and <= (byte)'9') or (byte)'.';

    private static byte[] Lines(byte[] bytes, Action<List<string>> change)
    {
        // Latin-1 keeps every byte, whatever it stands for.
        List<string> lines = [.. Encoding.Latin1.GetString(bytes).Split('\n')];
        change(lines);
        return Encoding.Latin1.GetBytes(string.Join('\n', lines));
    }

    private (int From, int Count) Block(List<string> lines)
    {
        int from = random.Next(lines.Count);
        return (from, Math.Min(lines.Count - from, random.Next(1, 12)));
    }

    private void Doubled(List<string> lines)
    {
        (int from, int count) = Block(lines);
        int times = random.Next(8) == 0 ? random.Next(1, 200) : 1;
        List<string> block = lines.GetRange(from, count);
        for (int i = 0; i < times; i++)
        {
            lines.InsertRange(random.Next(2) == 0 ? from : random.Next(lines.Count + 1), block);
        }
    }

    private void Moved(List<string> lines)
    {
        (int from, int count) = Block(lines);
        List<string> block = lines.GetRange(from, count);
        lines.RemoveRange(from, count);
        lines.InsertRange(random.Next(lines.Count + 1), block);
    }

    private void Indented(List<string> lines)
    {
        int i = random.Next(lines.Count);
        lines[i] = random.Next(2) == 0 ? new string(' ', random.Next(1, 5)) + lines[i] : lines[i].TrimStart();
    }

    private void WithValue(List<string> lines)
    {
        int i = random.Next(lines.Count), colon = lines[i].IndexOf(": ", StringComparison.Ordinal);
        string word = Encoding.Latin1.GetString(Encoding.UTF8.GetBytes(Words[random.Next(Words.Length)]));
        lines[i] = colon < 0 ? word : lines[i][..(colon + 2)] + word;
    }

    private byte[] Nest()
    {
        int depth = (int)Math.Pow(10, 1 + (random.NextDouble() * 4));
        string text = random.Next(4) switch
        {
            0 => new string('[', depth),
            1 => new string('{', depth),
            2 => string.Concat(Enumerable.Repeat("- ", depth)),
            _ => string.Concat(Enumerable.Repeat("{a: ", depth)),
        };
        return Encoding.UTF8.GetBytes(text + (random.Next(2) == 0 ? new string(']', depth) : ""));
    }

    private byte[] Bomb(byte[] bytes)
    {
        StringBuilder bomb = new("a0: &a0 [x,x,x,x,x,x,x,x,x]\n");
        for (int i = 1; i < 12; i++)
        {
            bomb.Append(CultureInfo.InvariantCulture, $"a{i}: &a{i} [").Append(string.Join(',', Enumerable.Repeat($"*a{i - 1}", 9))).Append("]\n");
        }

        return random.Next(2) == 0 ? [.. Encoding.UTF8.GetBytes(bomb.ToString()), .. bytes] : [.. bytes, .. Encoding.UTF8.GetBytes(bomb.ToString())];
    }

    private byte[] Run()
    {
        string[] parts = ["x", "0, ", "- \n", "[1, 2], ", ",", ";", "'", "\"", "\\", "#", " ", "\n", "a: b\n", "e\u0301", "🏠"];
        string part = parts[random.Next(parts.Length)];
        return Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(part, random.Next(1, LongestRun / part.Length))));
    }
}
