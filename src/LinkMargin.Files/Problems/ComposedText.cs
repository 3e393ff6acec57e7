using System.Globalization;
using System.Text;
using LinkMargin.Files.Resources;

namespace LinkMargin.Files.Problems;

/// <summary>
/// Unicode normalisation form C (UAX #15), so that a letter with an accent is the same text however it was typed. Our own code,
/// since the framework's does nothing in a program without the system's language data, like this one.
/// </summary>
internal static class ComposedText
{
    // Hangul syllables are computed (The Unicode Standard, section 3.12); the constants have the standard's names.
    private const int SBase = 0xAC00, LBase = 0x1100, VBase = 0x1161, TBase = 0x11A7;
    private const int LCount = 19, VCount = 21, TCount = 28, SCount = LCount * VCount * TCount;

    // No character below this one is part of a decomposition that could change a text.
    private const char FirstCombining = '\u0300';

    private static readonly Lazy<Data> Known = new(Data.Read);

    /// <summary>The text in form C; unpaired surrogates stay as they are.</summary>
    public static string Of(string text) => text.All(c => c < FirstCombining) ? text : Compose(Decompose(text));

    private static List<int> Decompose(string text)
    {
        List<int> codes = [];
        for (int i = 0; i < text.Length; i++)
        {
            bool isPair = char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]);
            AddDecomposed(isPair ? char.ConvertToUtf32(text[i], text[++i]) : text[i], codes);
        }

        // Canonical ordering: marks are sorted by class; those of one class keep their order.
        for (int from = 0; from < codes.Count; from++)
        {
            int to = from;
            while (to < codes.Count && ClassOf(codes[to]) != 0)
            {
                to++;
            }

            if (to > from + 1)
            {
                int[] sorted = [.. codes[from..to].OrderBy(ClassOf)];
                for (int i = 0; i < sorted.Length; i++)
                {
                    codes[from + i] = sorted[i];
                }
            }

            from = to;
        }

        return codes;
    }

    private static void AddDecomposed(int code, List<int> codes)
    {
        if (code is >= SBase and < SBase + SCount)
        {
            int index = code - SBase, trailing = index % TCount;
            codes.AddRange([LBase + (index / (VCount * TCount)), VBase + (index % (VCount * TCount) / TCount)]);
            if (trailing > 0)
            {
                codes.Add(TBase + trailing);
            }
        }
        else if (Known.Value.Parts.TryGetValue(code, out int[]? parts))
        {
            foreach (int part in parts)
            {
                AddDecomposed(part, codes);
            }
        }
        else
        {
            codes.Add(code);
        }
    }

    private static string Compose(List<int> codes)
    {
        List<int> made = [];
        int starter = -1, lastClass = 0;
        foreach (int code in codes)
        {
            int own = ClassOf(code);
            bool isBlocked = starter < 0 || (made.Count - 1 > starter && (lastClass >= own || lastClass == 0));
            if (!isBlocked && Composed(made[starter], code) is int both)
            {
                made[starter] = both;
                continue;
            }

            made.Add(code);
            if (own == 0)
            {
                starter = made.Count - 1;
            }

            lastClass = own;
        }

        StringBuilder text = new();
        foreach (int code in made)
        {
            // An unpaired surrogate cannot be converted from its code point; it is copied unchanged.
            text.Append(code is >= 0xD800 and <= 0xDFFF ? ((char)code).ToString() : char.ConvertFromUtf32(code));
        }

        return text.ToString();
    }

    private static int? Composed(int first, int second)
    {
        if (first is >= LBase and < LBase + LCount && second is >= VBase and < VBase + VCount)
        {
            return SBase + ((((first - LBase) * VCount) + (second - VBase)) * TCount);
        }

        bool takesTrailing = first is >= SBase and < SBase + SCount && (first - SBase) % TCount == 0;
        return takesTrailing && second is > TBase and < TBase + TCount ? first + (second - TBase)
            : Known.Value.Composed.TryGetValue((first, second), out int both) ? both
            : null;
    }

    private static int ClassOf(int code) => code < FirstCombining ? 0 : Known.Value.Classes.GetValueOrDefault(code);

    private sealed record Data(Dictionary<int, int[]> Parts, Dictionary<(int, int), int> Composed, Dictionary<int, int> Classes)
    {
        public static Data Read()
        {
            Data data = new([], [], []);
            foreach (string line in EmbeddedText.Read("problems/composition.txt").Split('\n', StringSplitOptions.RemoveEmptyEntries))
            {
                if (line[0] != '#')
                {
                    data.Take(line);
                }
            }

            return data;
        }

        private void Take(string line)
        {
            string[] words = line.TrimStart('+').Split(' ');
            if (words[0].Split("..") is [string first, string last])
            {
                for (int code = Code(first); code <= Code(last); code++)
                {
                    Classes.Add(code, int.Parse(words[1], CultureInfo.InvariantCulture));
                }

                return;
            }

            int[] parts = [.. words.Skip(1).Select(Code)];
            Parts.Add(Code(words[0]), parts);
            if (line[0] == '+')
            {
                Composed.Add((parts[0], parts[1]), Code(words[0]));
            }
        }

        private static int Code(string hexadecimal) => int.Parse(hexadecimal, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
    }
}
