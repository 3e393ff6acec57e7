using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Edits;

/// <summary>Reads and checks the places that an edit moves things to.</summary>
/// <param name="house">The house.</param>
/// <param name="bareUnit">The unit of its file.</param>
/// <param name="east">What the person who makes the edit calls the coordinate to the east.</param>
/// <param name="north">What they call the one to the north.</param>
internal sealed class EditPlaces(House house, LengthUnit bareUnit, string east = "x", string north = "y")
{
    private const string On = " on ";

    private readonly LengthFormat lengths = new(bareUnit);

    /// <summary>Reads lengths separated by spaces or commas, and the level if <c>on LEVEL</c> follows.</summary>
    /// <param name="text">What is written.</param>
    /// <param name="levelIndex">The level if none is written.</param>
    /// <param name="least">The fewest lengths.</param>
    /// <param name="most">The most lengths.</param>
    public (int Level, double[] Metres) Read(string text, int levelIndex, int least, int most)
    {
        int on = text.LastIndexOf(On, StringComparison.Ordinal);
        if (on > 0)
        {
            string word = EditNames.Unquoted(text[(on + On.Length)..]);
            levelIndex = house.Levels.ToList().FindIndex(level => level.Name == word);
            if (levelIndex < 0)
            {
                throw new EditFaultException($"finds no level {Quote.Of(word)}; {NearestWord.Advice(word, [.. house.Levels.Select(l => l.Name)])}");
            }

            text = text[..on].Trim();
        }

        string form = least == most ? "X Y Z" : "X Y, or X Y Z with the height of the hands";
        string[] parts = Split(text, least, most, form);
        double[] metres = [.. parts.Select((part, i) => Length(part, i))];
        return (levelIndex, metres);
    }

    /// <summary>Refuses a place outside the level's plan or above its ceiling.</summary>
    public void Check(int levelIndex, Point2 plan, double heightMetres)
    {
        Level level = house.Levels[levelIndex];
        Point2[] corners = [.. level.Rooms.SelectMany(r => r.Outline.Corners), .. level.Walls.SelectMany(w => new[] { w.Start, w.End })];
        Point2 low = new(corners.Min(c => c.X), corners.Min(c => c.Y)), high = new(corners.Max(c => c.X), corners.Max(c => c.Y));
        const double Slack = HouseLimits.SameHeight;
        if (plan.X < low.X - Slack || plan.X > high.X + Slack || plan.Y < low.Y - Slack || plan.Y > high.Y + Slack)
        {
            throw new EditFaultException($"goes outside the level {Quote.Of(level.Name)}, which reaches {lengths.Extent(low, high, east, north)}");
        }

        if (heightMetres > level.HeightMetres + Slack)
        {
            throw new EditFaultException(
                $"goes to a height of {lengths.Exact(heightMetres)}, above the ceiling of the level {Quote.Of(level.Name)}; {lengths.Exact(0)} to {lengths.Exact(level.HeightMetres)} is allowed");
        }
    }

    /// <summary>The solid fixture a place lies in; null if there is none.</summary>
    public Fixture? SolidAt(int level, Point2 plan, double heightMetres) => house.Fixtures.FirstOrDefault(
        f => f.LevelIndex == level && !f.IsShell && f.Contains(plan, heightMetres, -HouseLimits.SameHeight));

    private double Length(string text, int axis)
    {
        Parsed parsed = LengthText.Parse(text, bareUnit);
        if (parsed.Fault is { } fault)
        {
            throw new EditFaultException($"goes to {Quote.Of(text)}, which {fault}");
        }

        QuantityRange range = axis < 2 ? HouseLimits.Coordinate : HouseLimits.HeightOverFloor;
        return range.Contains(parsed.Value)
            ? parsed.Value
            : throw new EditFaultException($"goes to {Quote.Of(text)} ({lengths.Show(range, parsed.Value)}), but {lengths.Allowed(range)} is allowed");
    }

    // Lengths may contain spaces, as in 12ft 6in: the words are split in the one way that makes every part a length.
    private string[] Split(string text, int least, int most, string form)
    {
        if (text.Contains(',', StringComparison.Ordinal))
        {
            string[] listed = text.Split(',', StringSplitOptions.TrimEntries);
            return listed.Length >= least && listed.Length <= most
                ? listed
                : throw new EditFaultException(FormattableString.Invariant($"goes to {Quote.Of(text)}, which is {listed.Length} lengths; write {form}, with a point as the decimal sign"));
        }

        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (int parts = least; parts <= most; parts++)
        {
            string[][] ways = [.. Ways(words, parts).Where(way => way.All(part => LengthText.Parse(part, bareUnit).Fault is null)).Take(2)];
            if (ways.Length > 1)
            {
                throw new EditFaultException($"goes to {Quote.Of(text)}, which is ambiguous; put commas between the lengths");
            }

            if (ways.Length == 1)
            {
                return ways[0];
            }
        }

        return words.Length >= least && words.Length <= most
            ? words // a fault in one of them is reported for that one
            : throw new EditFaultException($"goes to {Quote.Of(text)}, which is not a position; write {form}, such as {Example(most == least)}");
    }

    private string Example(bool withHeight) => (lengths.InFeet, withHeight) switch
    {
        (true, true) => "10ft 6in, 18ft, 5ft 3in",
        (true, false) => "10ft 6in, 18ft",
        (false, true) => "3.2 5.5 1.6",
        (false, false) => "3.2 5.5",
    };

    private static IEnumerable<string[]> Ways(string[] words, int parts)
    {
        if (parts == 1)
        {
            if (words.Length > 0)
            {
                yield return [string.Join(' ', words)];
            }

            yield break;
        }

        for (int first = 1; first <= Math.Min(words.Length - parts + 1, LongestLength); first++)
        {
            foreach (string[] rest in Ways(words[first..], parts - 1))
            {
                yield return [string.Join(' ', words[..first]), .. rest];
            }
        }
    }

    // The most words in one length, as in 12 ft 6 1/2 in.
    private const int LongestLength = 5;
}
