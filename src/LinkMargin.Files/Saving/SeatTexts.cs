using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Saving;

/// <summary>Writes moved, turned or removed seats into the text of a house file. All players of one seat share one entry.</summary>
internal sealed class SeatTexts(TextSurgery surgery, FileLengths lengths, House now)
{
    private const string Key = "seats";

    /// <summary>Writes those that changed.</summary>
    public void Write(House inFile)
    {
        foreach (IGrouping<string, Seat> players in inFile.Seats.GroupBy(seat => seat.WrittenName))
        {
            Seat[] was = [.. players];
            Seat[] left = [.. was.Select(seat => now.Seats.FirstOrDefault(one => one.Name == seat.Name)).OfType<Seat>()];
            if (left.Length == 0)
            {
                surgery.Remove(surgery.Root, Key, Node(players.Key));
            }
            else if (left.Length < was.Length)
            {
                throw new CannotBeSavedException(
                    $"one player of the seat {Quote.Of(players.Key)} is on a cable and the others are not, which a house file cannot express; in the file, write a separate seat for each player");
            }
            else
            {
                Write(players.Key, was, left);
            }
        }
    }

    private TextGroup Node(string name) => surgery.Root.Listed(Key).First(node => NameText.Normal(node.ValueOf("name") ?? "") == name);

    private void Write(string name, Seat[] was, Seat[] seats)
    {
        // Places first if several sit side by side, because where they face decides where they sit.
        if (seats.Zip(was).Any(pair => !AreSame(pair.First.Plan, pair.Second.Plan)) || (seats.Length > 1 && IsTurned(was[0], seats[0])))
        {
            WritePlaces(name, was, seats);
        }

        if (IsTurned(was[0], seats[0]))
        {
            surgery.Set(Node(name), "facing", seats[0].FacingDegrees!.Value.ToString("0.##", CultureInfo.InvariantCulture));
        }

        if (!lengths.AreSame(seats[0].HandsMetres, was[0].HandsMetres))
        {
            surgery.Set(Node(name), "hands", lengths.Text(seats[0].HandsMetres, Node(name).ValueOf("hands") ?? "0"));
        }

        if (seats[0].LevelIndex != was[0].LevelIndex)
        {
            LevelText.Write(surgery, () => Node(name), now, seats[0].LevelIndex);
        }
    }

    // A player who faces a fixture turns with it automatically, and keeps the direction if the fixture is removed.
    private static bool IsTurned(Seat was, Seat seat) => seat.FacingDegrees is { } degrees && seat.Faces is null
        && (was.Faces is not null || was.FacingDegrees is not { } before || Math.Abs(Math.IEEERemainder(degrees - before, 360)) > 0.005);

    private void WritePlaces(string name, Seat[] was, Seat[] seats)
    {
        switch (Node(name).Of("players")?.Value)
        {
            case null:
                WritePlace(() => (TextList)Node(name).Of("at")!.Value, seats[0].Plan);
                return;
            case TextList:
                for (int i = 0; i < seats.Length; i++)
                {
                    int player = i;
                    WritePlace(() => (TextList)((TextList)Node(name).Of("players")!.Value).Items[player], seats[i].Plan);
                }

                return;
            default:
                Point2 step = seats[0].Plan - was[0].Plan;
                if (!IsTurned(was[0], seats[0]) && seats.Zip(was).All(pair => AreSame(pair.First.Plan, pair.Second.Plan + step)))
                {
                    double n = seats.Length;
                    WritePlace(() => (TextList)Node(name).Of("at")!.Value, new(seats.Sum(seat => seat.Plan.X) / n, seats.Sum(seat => seat.Plan.Y) / n));
                    return;
                }

                // No longer a row: each player gets a place of their own.
                surgery.Set(Node(name), "players", $"[{string.Join(", ", seats.Select(seat => $"[{lengths.Text(seat.Plan.X, "0")}, {lengths.Text(seat.Plan.Y, "0")}]"))}]");
                surgery.Remove(Node(name), "at");
                return;
        }
    }

    private bool AreSame(Point2 a, Point2 b) => lengths.AreSame(a.X, b.X) && lengths.AreSame(a.Y, b.Y);

    private void WritePlace(Func<TextList> node, Point2 plan) => PlaceTexts.Write(surgery, lengths, node, [plan.X, plan.Y]);
}
