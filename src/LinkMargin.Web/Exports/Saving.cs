using System.Text;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Saving;
using LinkMargin.Files.Writing;
using LinkMargin.Reports.Houses;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Exports;

/// <summary>Writes the changed house into the house file, or into a copy beside it.</summary>
/// <param name="tried">The house.</param>
internal sealed class Saving(TriedHouse tried)
{
    private const int LongestName = 120;
    private const int MostLinesTold = 12;

    private static readonly string[] Endings = [".yaml", ".yml"];

    /// <summary>The house file with all changes, as bytes.</summary>
    /// <exception cref="CannotBeDoneException">A change cannot be expressed in the file.</exception>
    public byte[] BytesOfNow() => BytesOf(tried.Current);

    /// <summary>Saves.</summary>
    /// <param name="name">A file name in the folder of the house file; empty for the house file itself.</param>
    /// <exception cref="CannotBeDoneException">The name is not in that folder, or a change cannot be expressed in the file.</exception>
    /// <exception cref="FileProblemException">It cannot be written, or must not be replaced.</exception>
    public Answer Save(string name)
    {
        string houseFile = tried.Source.Path;
        if (name.Length == 0 || name == Path.GetFileName(houseFile))
        {
            return SaveHere(houseFile);
        }

        string path = Path.Combine(Path.GetDirectoryName(houseFile)!, Checked(name));
        if (WholeFile.AreSame(path, houseFile))
        {
            return SaveHere(houseFile);
        }

        // Never overwrites an existing file: its author may need it.
        WholeFile.Write(path, BytesOfNow(), force: false);
        return new Answer(true, $"Saved as {name}. This page still has {Path.GetFileName(houseFile)} open.");
    }

    private Answer SaveHere(string houseFile)
    {
        HouseState state = tried.Current;
        byte[] onDisk = HouseOnDisk.BytesOf(houseFile);
        if (!onDisk.AsSpan().SequenceEqual(state.Disk.Bytes))
        {
            return new Answer(false, "The house file has changed on disk, so nothing was saved. The page now loads the changed file and applies your changes to it; check the result and save again. What differs:")
            {
                Lines = LineDifference.Of(state.Disk.Text, Encoding.UTF8.GetString(onDisk), MostLinesTold),
            };
        }

        byte[] bytes = BytesOf(state);
        if (!bytes.AsSpan().SequenceEqual(onDisk))
        {
            WholeFile.Write(houseFile, bytes, force: true);
            tried.Saved();
        }

        return new Answer(true, $"Saved in {Path.GetFileName(houseFile)}.") { Version = tried.Current.Version };
    }

    private byte[] BytesOf(HouseState state)
    {
        try
        {
            string text = ChangedText.Of(state.Disk.Text, state.InFile.House, state.Now.House, state.Now.Unit, tried.Source.Tables);
            byte[] bytes = Encoding.UTF8.GetBytes(text);
            return state.Disk.Bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? [.. Encoding.UTF8.Preamble, .. bytes] : bytes;
        }
        catch (CannotBeSavedException reason)
        {
            throw new CannotBeDoneException(reason.Message);
        }
    }

    // A plain file name on every system, which cannot leave the folder, hide the file or name a device.
    private static string Checked(string name)
    {
        bool isPlain = name.Length <= LongestName && name == name.Trim() && name[0] is not ('.' or '-') && NameText.Fault(name) is null
            && name.IndexOfAny(['/', '\\', ':', '*', '?', '"', '<', '>', '|']) < 0
            && Endings.Contains(Path.GetExtension(name).ToLowerInvariant());
        return isPlain
            ? name
            : throw new CannotBeDoneException($"{Quote.Of(name)} cannot be the name of a house file; write a plain file name that ends in .yaml, without a folder");
    }
}

/// <summary>The lines in which two texts differ, up to a limit.</summary>
internal static class LineDifference
{
    /// <summary>Lines that only one of the texts has: those of the first with a minus, those of the second with a plus.</summary>
    public static IReadOnlyList<string> Of(string one, string other, int most)
    {
        string[] was = one.ReplaceLineEndings("\n").Split('\n'), now = other.ReplaceLineEndings("\n").Split('\n');
        HashSet<string> inWas = [.. was], inNow = [.. now];
        List<string> lines =
        [
            .. was.Select((line, i) => (Line: line, Number: i + 1)).Where(pair => !inNow.Contains(pair.Line)).Select(pair => FormattableString.Invariant($"- {pair.Number}: {pair.Line.Trim()}")),
            .. now.Select((line, i) => (Line: line, Number: i + 1)).Where(pair => !inWas.Contains(pair.Line)).Select(pair => FormattableString.Invariant($"+ {pair.Number}: {pair.Line.Trim()}")),
        ];
        return lines.Count == 0 ? ["only the order of lines, blanks or line endings"]
            : lines.Count > most ? [.. lines.Take(most), FormattableString.Invariant($"and {lines.Count - most} more")]
            : lines;
    }
}
