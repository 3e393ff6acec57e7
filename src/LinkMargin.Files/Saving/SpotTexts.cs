using LinkMargin.Engine.Houses;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Saving;

/// <summary>Writes moved spots into the text of a house file. A spot inside a shell stays inside as long as the shell exists.</summary>
internal sealed class SpotTexts(TextSurgery surgery, FileLengths lengths, House now)
{
    private const string Key = "spots";

    /// <summary>Writes those that moved, or whose shell was removed.</summary>
    public void Write(House inFile)
    {
        foreach (Spot was in inFile.Spots)
        {
            Spot spot = now.Spots.First(one => one.Name == was.Name);
            bool hasMoved = spot.Lead != was.Lead || spot.LevelIndex != was.LevelIndex || !lengths.AreSame(spot.Plan.X, was.Plan.X) || !lengths.AreSame(spot.Plan.Y, was.Plan.Y)
                || !lengths.AreSame(spot.HeightMetres, was.HeightMetres);
            string? inside = Node(spot).ValueOf("inside");
            bool isShellGone = inside is not null && HostOf(inside) is null;
            if (hasMoved || isShellGone)
            {
                if (was.Lead is not null && spot.Lead is null)
                {
                    surgery.Remove(Node(spot), "lead");
                }

                // The file gives the place of the console, not of a radio on a lead.
                Write(spot.Lead is { } lead ? spot with { Plan = lead.ConsolePlan, HeightMetres = lead.ConsoleHeightMetres } : spot, inside);
            }
        }
    }

    private TextGroup Node(Spot spot) => surgery.Root.Listed(Key).First(node => NameText.Normal(node.ValueOf("name") ?? "") == spot.Name);

    private Fixture? HostOf(string name) => now.Fixtures.FirstOrDefault(fixture => fixture.Name == NameText.Normal(name));

    private void Write(Spot spot, string? inside)
    {
        Fixture? host = inside is null ? null : HostOf(inside);
        if (host is not null && host.LevelIndex == spot.LevelIndex && host.Contains(spot.Plan, spot.HeightMetres, HouseLimits.SameHeight))
        {
            WriteInside(spot, host);
            return;
        }

        if (inside is not null)
        {
            surgery.Remove(Node(spot), "inside");
        }

        WriteAt(spot);
        LevelText.Write(surgery, () => Node(spot), now, spot.LevelIndex);
    }

    private void WriteInside(Spot spot, Fixture host)
    {
        bool isInTheMiddle = lengths.AreSame(spot.Plan.X, host.Centre.X) && lengths.AreSame(spot.Plan.Y, host.Centre.Y);
        if (isInTheMiddle && Node(spot).Of("height") is { } height)
        {
            surgery.Replace(height.Value, lengths.Text(spot.HeightMetres, surgery.At(height.Value)));
        }
        else
        {
            WriteAt(spot);
        }
    }

    private void WriteAt(Spot spot)
    {
        if (Node(spot).Of("height") is { } height && Node(spot).Of("at") is null)
        {
            // Written in place of the height, so that the keys keep their order.
            string at = PlaceText(spot);
            surgery.Replace(height.Value, at);
            surgery.Replace(Node(spot).Of("height")!.Key, "at");
            return;
        }

        if (Node(spot).Of("at")?.Value is TextList { Items: [TextScalar, TextScalar, TextScalar] })
        {
            double[] metres = [spot.Plan.X, spot.Plan.Y, spot.HeightMetres];
            PlaceTexts.Write(surgery, lengths, () => (TextList)Node(spot).Of("at")!.Value, metres);
        }
        else
        {
            surgery.Set(Node(spot), "at", PlaceText(spot));
        }
    }

    private string PlaceText(Spot spot) => $"[{lengths.Text(spot.Plan.X, "0")}, {lengths.Text(spot.Plan.Y, "0")}, {lengths.Text(spot.HeightMetres, "0")}]";
}

/// <summary>Writes the lengths of a place one by one; unchanged ones keep their text.</summary>
internal static class PlaceTexts
{
    /// <summary>Writes the lengths.</summary>
    public static void Write(TextSurgery surgery, FileLengths lengths, Func<TextList> node, IReadOnlyList<double> metres)
    {
        for (int i = 0; i < metres.Count; i++)
        {
            var scalar = (TextScalar)node().Items[i];
            if (!lengths.AreSame(lengths.Parsed(scalar.Value), metres[i]))
            {
                surgery.Replace(scalar, lengths.Text(metres[i], scalar.Value));
            }
        }
    }
}

/// <summary>Writes the level of a thing.</summary>
internal static class LevelText
{
    /// <summary>Writes it if there is more than one level and it is not already there.</summary>
    public static void Write(TextSurgery surgery, Func<TextGroup> node, House house, int level)
    {
        string name = house.Levels[level].Name;
        if (house.Levels.Count > 1 && NameText.Normal(node().ValueOf("level") ?? "") != name)
        {
            surgery.Set(node(), "level", YamlWord.Of(name));
        }
    }
}
