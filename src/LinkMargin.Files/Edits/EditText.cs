using System.Globalization;
using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Edits;

/// <summary>Reads one edit of a house, such as <c>close door den door</c>.</summary>
public sealed class EditText
{
    /// <summary>How each edit is written, for help and messages.</summary>
    public static IReadOnlyList<string> Forms { get; } =
    [
        "open door NAME", "close door NAME", "remove fixture NAME", "material WALL = NAME", "move spot NAME to X Y Z",
        "move seat NAME to X Y", "turn seat NAME to DEGREES",
    ];

    private readonly House house;
    private readonly MaterialTables tables;
    private readonly EditPlaces places;
    private readonly EditNames names;
    private readonly LengthFormat lengths;

    /// <summary>Reads edits of a house.</summary>
    /// <param name="house">The house before the edit.</param>
    /// <param name="tables">The tables that materials are looked up in.</param>
    /// <param name="bareUnit">The unit of a length without one.</param>
    public EditText(House house, MaterialTables tables, LengthUnit bareUnit)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(tables);
        (this.house, this.tables, lengths) = (house, tables, new LengthFormat(bareUnit));
        places = new EditPlaces(house, bareUnit);
        names = new EditNames(house);
    }

    /// <summary>Reads an edit.</summary>
    /// <exception cref="EditFaultException">It is not an edit, or the house has nothing of that name.</exception>
    public WrittenEdit Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string[] words = NameText.Normal(text).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        string plain = string.Join(' ', words);
        if (NameText.Fault(plain) is { } fault && plain.Length > 0)
        {
            throw new EditFaultException(fault);
        }

        string verb = words.Length > 0 ? words[0] : "";
        string thing = words.Length > 1 ? words[1] : "";
        string rest = string.Join(' ', words.Skip(2));
        return (verb, thing) switch
        {
            ("open" or "close", "door" or "window") => Opening(plain, verb, thing, rest),
            ("remove", "fixture") => new WrittenEdit(plain, new RemoveFixture(EditNames.Of("fixture", rest, house.Fixtures.Select(f => f.Name))), null),
            ("material", not "") => WallMaterial(plain, string.Join(' ', words.Skip(1))),
            ("move", "spot") => MoveSpot(plain, rest),
            ("move", "seat") => MoveSeat(plain, rest),
            ("turn", "seat") => TurnSeat(plain, rest),
            _ => throw NoSuchEdit(verb, thing),
        };
    }

    private static EditFaultException NoSuchEdit(string verb, string thing)
    {
        string[][] known = [.. Forms.Select(form => form.Split(' ')).Select(form => (string[])[form[0], form[1]]), ["open", "window"], ["close", "window"]];
        string[] verbs = [.. known.Select(form => form[0]).Distinct()];
        if (!verbs.Contains(verb))
        {
            return new EditFaultException($"is not an edit; {(NearestWord.Find(verb, verbs) is { } meant ? $"did you mean '{meant}'?" : $"write one of: {string.Join("; ", Forms)}")}");
        }

        string[] things = [.. known.Where(form => form[0] == verb).Select(form => form[1])];
        string form = string.Join(" or ", Forms.Where(form => form.StartsWith(verb + " ", StringComparison.Ordinal)).Select(f => $"'{f}'"));
        return new EditFaultException(NearestWord.Find(thing, things) is { } near ? $"is not an edit; did you mean '{verb} {near}'?" : $"is not complete; write {form}");
    }

    private WrittenEdit Opening(string text, string verb, string thing, string rest)
    {
        OpeningKind kind = thing == "door" ? OpeningKind.Door : OpeningKind.Window;
        (string name, int? level) = names.OnLevel(thing, rest, house.Levels.Select(l => l.Walls.SelectMany(w => w.Openings).Where(o => o.Kind == kind).Select(o => o.Name)));
        bool open = verb == "open";
        bool already = house.Levels.Where((_, i) => level is null || i == level)
            .SelectMany(l => l.Walls).SelectMany(w => w.Openings).Where(o => o.Kind == kind && o.Name == name).All(o => o.IsOpen == open);
        return new WrittenEdit(
            text, new SetOpening(name, level, open), already ? $"the {thing} {Quote.Of(name)} is {(open ? "open" : "shut")} already, so this changes nothing" : null);
    }

    private WrittenEdit WallMaterial(string text, string rest)
    {
        int equals = rest.LastIndexOf('=');
        if (equals < 0)
        {
            throw new EditFaultException("needs '=' between the wall and its material; write 'material WALL = NAME'");
        }

        (string wall, int? level) = names.OnLevel("wall", rest[..equals].Trim(), house.Levels.Select(l => l.Walls.Select(w => w.Name)));
        string word = EditNames.Unquoted(rest[(equals + 1)..].Trim());
        return tables.Materials.TryGetValue(word, out Material? material)
            ? new WrittenEdit(text, new SetWallMaterial(wall, level, material), PanelAdvice.Of(material, tables, lengths))
            : throw new EditFaultException(
                $"names the material {Quote.Of(word)}, which is not in the material table; {NearestWord.Advice(word, [.. tables.Materials.Keys], "'linkmargin materials'")}");
    }

    private WrittenEdit MoveSpot(string text, string rest)
    {
        (string typed, string to) = Halves(rest, "move spot NAME to X Y Z");
        string name = EditNames.Of("spot", typed, house.Spots.Select(s => s.Name));
        Spot spot = house.Spots.First(s => s.Name == name);
        (int level, double[] at) = places.Read(to, spot.LevelIndex, 3, 3);
        places.Check(level, new Point2(at[0], at[1]), at[2]);
        if (places.SolidAt(level, new Point2(at[0], at[1]), at[2]) is { } solid)
        {
            throw new EditFaultException($"puts the spot inside the fixture {Quote.Of(solid.Name)}, which is solid; choose another place");
        }

        return new WrittenEdit(text, new MoveSpot(spot.Name, level, new Point2(at[0], at[1]), at[2]), null);
    }

    private WrittenEdit MoveSeat(string text, string rest)
    {
        (string typed, string to) = Halves(rest, "move seat NAME to X Y");
        string name = EditNames.Of("seat", typed, house.Seats.Select(s => s.Name));
        Seat seat = house.Seats.First(s => s.Name == name);
        (int level, double[] at) = places.Read(to, seat.LevelIndex, 2, 3);
        double hands = at.Length > 2 ? at[2] : seat.HandsMetres;
        Point2 place = new(at[0], at[1]);
        places.Check(level, place, hands);
        if (seat.Faces is { } faced && house.Fixtures.FirstOrDefault(f => f.Name == faced) is { } fixture && place.DistanceTo(fixture.Centre) < HouseLimits.SameHeight)
        {
            throw new EditFaultException($"puts the seat at the centre of the fixture {Quote.Of(faced)} it faces; choose another place");
        }

        string? odd = places.SolidAt(level, place, hands) is { } solid
            ? $"the hands of the seat {Quote.Of(name)} are then inside the solid fixture {Quote.Of(solid.Name)}"
            : null;
        return new WrittenEdit(text, new MoveSeat(name, level, place, hands), odd);
    }

    private WrittenEdit TurnSeat(string text, string rest)
    {
        (string typed, string to) = Halves(rest, "turn seat NAME to DEGREES");
        string name = EditNames.Of("seat", typed, house.Seats.Select(s => s.Name));
        if (Sides.Directions.TryGetValue(to, out double direction))
        {
            return new WrittenEdit(text, new TurnSeat(name, direction), null);
        }

        Parsed degrees = Quantity.Degrees.Parse(to);
        if (degrees.Fault is not null)
        {
            throw new EditFaultException(
                $"turns to {Quote.Of(to)}, which is not a direction; write degrees anticlockwise from east, or one of: {string.Join(", ", Sides.Directions.Keys)}");
        }

        return HouseLimits.Angle.Contains(degrees.Value)
            ? new WrittenEdit(text, new TurnSeat(name, Facing.Once(degrees.Value)), null)
            : throw new EditFaultException(string.Create(CultureInfo.InvariantCulture, $"turns to {degrees.Value:0.####} degrees; {HouseLimits.Angle} is allowed"));
    }

    // Splits at the last ' to ': a name may contain it, a place cannot.
    private static (string Name, string To) Halves(string rest, string form)
    {
        int at = rest.LastIndexOf(" to ", StringComparison.Ordinal);
        return at > 0
            ? (rest[..at].Trim(), rest[(at + 4)..].Trim())
            : throw new EditFaultException($"does not say where to; write '{form}'");
    }
}

/// <summary>A text is not a valid edit; says why and what to write, without the edit itself.</summary>
public sealed class EditFaultException(string message) : Exception(message);

/// <summary>An edit as a person wrote it.</summary>
/// <param name="Text">The text, without superfluous spaces.</param>
/// <param name="Edit">What it does.</param>
/// <param name="Warning">What looks wrong about it; null if nothing does.</param>
public sealed record WrittenEdit(string Text, HouseEdit Edit, string? Warning);
