using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Saving;

/// <summary>
/// Writes the changes of a house into the text of its file. Everything else stays byte for byte, including comments and layout.
/// The new text is read again and compared with the changed house; a text that does not match is never returned.
/// </summary>
public sealed class ChangedText
{
    private readonly House inFile, now;
    private readonly FileLengths lengths;
    private readonly TextSurgery surgery;

    private ChangedText(string text, House inFile, House now, LengthUnit unit)
    {
        (this.inFile, this.now, lengths, surgery) = (inFile, now, new FileLengths(unit), new TextSurgery(text));
    }

    /// <summary>The text of the changed house.</summary>
    /// <param name="text">The text of the house file, without a byte order mark.</param>
    /// <param name="inFile">The house in that text.</param>
    /// <param name="now">The house to write.</param>
    /// <param name="unit">The unit of the file's bare lengths.</param>
    /// <param name="tables">The tables that its names are looked up in.</param>
    /// <exception cref="CannotBeSavedException">A change cannot be expressed in the file; says which.</exception>
    public static string Of(string text, House inFile, House now, LengthUnit unit, MaterialTables tables)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(inFile);
        ArgumentNullException.ThrowIfNull(now);
        if (HouseDifference.First(inFile, now) is null)
        {
            return text;
        }

        var changed = new ChangedText(text, inFile, now, unit);
        changed.WriteAll();
        HouseParseResult read = HouseFile.Parse(changed.surgery.Text, "the changed file", tables);
        string? difference = read.House is { } house
            ? HouseDifference.First(now, house)
            : read.Problems.First(problem => problem.Severity == Severity.Error).Message;
        return difference is null
            ? changed.surgery.Text
            : throw new CannotBeSavedException($"the changed house cannot be written into this file: {difference}; nothing was saved. Make this change in the file by hand");
    }

    private void WriteAll()
    {
        WriteRadios();
        for (int level = 0; level < now.Levels.Count; level++)
        {
            new OpeningTexts(surgery, level).Write(inFile.Levels[level], now.Levels[level]);
            new WallTexts(surgery, lengths, level).Write(inFile.Levels[level], now.Levels[level]);
        }

        // Seats and spots before fixtures, because they may refer to one that is removed.
        new SeatTexts(surgery, lengths, now).Write(inFile);
        new SpotTexts(surgery, lengths, now).Write(inFile);
        WriteFixtures();
    }

    private void WriteRadios()
    {
        Write("console", inFile.Console, now.Console);
        Write("controller", inFile.Controller, now.Controller);

        void Write(string key, Radio was, Radio radio)
        {
            if (was == radio)
            {
                return;
            }

            if (surgery.Root.Of("radios")?.Value is TextGroup radios)
            {
                surgery.Set(radios, key, YamlWord.Of(radio.Name));
            }
            else
            {
                surgery.Set(surgery.Root, "radios", $"{{{key}: {YamlWord.Of(radio.Name)}}}");
            }
        }
    }

    private void WriteFixtures()
    {
        foreach (Fixture was in inFile.Fixtures)
        {
            if (now.Fixtures.FirstOrDefault(fixture => fixture.Name == was.Name) is not { } fixture)
            {
                surgery.Remove(surgery.Root, "fixtures", Node(was.Name));
                continue;
            }

            foreach ((string word, BoxSides side) in Sides.OfCompass.Append(new("top", BoxSides.Top)).Append(new("bottom", BoxSides.Bottom)))
            {
                if (fixture.PanelOn(side)?.Name != was.PanelOn(side)?.Name)
                {
                    WriteSide(was, word, side, fixture.PanelOn(side));
                }
            }
        }

        TextGroup Node(string name) => surgery.Root.Listed("fixtures").First(node => NameText.Normal(node.ValueOf("name") ?? "") == name);

        // Sides may be written by compass or as front, back, left and right; the existing words are kept.
        void WriteSide(Fixture was, string word, BoxSides side, Material? panel)
        {
            BoxSides front = Sides.OfCompass.GetValueOrDefault(Node(was.Name).ValueOf("front") ?? "south", BoxSides.South);
            IReadOnlyDictionary<string, BoxSides> words = Sides.OfFixture(front);
            if (Node(was.Name).Of("open")?.Value is TextList open
                && open.Items.OfType<TextScalar>().FirstOrDefault(item => words.GetValueOrDefault(item.Value) == side) is { } there)
            {
                if (panel is null)
                {
                    return;
                }

                surgery.Remove(Node(was.Name), "open", there);
            }

            if (Node(was.Name).Of("sides")?.Value is TextGroup sides)
            {
                string key = sides.Entries.FirstOrDefault(entry => words.GetValueOrDefault(entry.Key.Value) == side)?.Key.Value ?? word;
                surgery.Set(sides, key, panel is null ? "none" : YamlWord.Of(panel.Name));
            }
            else if (panel is null)
            {
                surgery.Add(Node(was.Name), "open", word);
            }
            else
            {
                surgery.Set(Node(was.Name), "sides", $"{{{word}: {YamlWord.Of(panel.Name)}}}");
            }
        }
    }
}

/// <summary>A change cannot be expressed in a house file. The message says which, and what to do.</summary>
public sealed class CannotBeSavedException(string message) : Exception(message);
