using System.Text.Json.Serialization;

namespace LinkMargin.Files.Changes;

/// <summary>
/// One change of a house as a journal keeps it and a page sends it: what kind it is, and those of the other members that the kind has.
/// Lengths are metres, angles degrees anticlockwise from east.
/// </summary>
/// <param name="Kind">One of <see cref="ChangeKinds"/>.</param>
public sealed record HouseChange(string Kind)
{
    /// <summary>The spot, seat, opening, wall or fixture that changes; the radio of a choice of radio.</summary>
    public string? Name { get; init; }

    /// <summary>The level it is on afterwards; 0 is the lowest.</summary>
    public int? Level { get; init; }

    /// <summary>Where on the plan, metres east.</summary>
    public double? X { get; init; }

    /// <summary>Where on the plan, metres north.</summary>
    public double? Y { get; init; }

    /// <summary>Height above that level's floor, metres.</summary>
    public double? Height { get; init; }

    /// <summary>Where a player looks.</summary>
    public double? Degrees { get; init; }

    /// <summary>Whether an opening stands open.</summary>
    public bool? Open { get; init; }

    /// <summary>What a wall or a panel is made of.</summary>
    public string? Material { get; init; }

    /// <summary>A side of a fixture: a compass word, <c>top</c> or <c>bottom</c>.</summary>
    public string? Side { get; init; }

    /// <summary>The seats with people on them.</summary>
    public IReadOnlyList<string>? Seats { get; init; }
}

/// <summary>The kinds of changes.</summary>
public static class ChangeKinds
{
    /// <summary>A spot put somewhere else.</summary>
    public const string MoveSpot = "move-spot";

    /// <summary>A seat put somewhere else.</summary>
    public const string MoveSeat = "move-seat";

    /// <summary>A seat turned.</summary>
    public const string TurnSeat = "turn-seat";

    /// <summary>A door or window opened or shut.</summary>
    public const string SetOpening = "set-opening";

    /// <summary>A wall of something else.</summary>
    public const string WallMaterial = "wall-material";

    /// <summary>A fixture taken away.</summary>
    public const string RemoveFixture = "remove-fixture";

    /// <summary>A side of a hollow fixture without its panel.</summary>
    public const string OpenSide = "open-side";

    /// <summary>A side of a hollow fixture with another panel.</summary>
    public const string SwapSide = "swap-side";

    /// <summary>Another console.</summary>
    public const string Console = "console";

    /// <summary>Other controllers.</summary>
    public const string Controller = "controller";

    /// <summary>A seat taken out of the question, as by a controller on a cable.</summary>
    public const string RemoveSeat = "remove-seat";

    /// <summary>Other people on the seats. It is no change of the house file.</summary>
    public const string People = "people";
}

/// <summary>Changes as JSON, for code that is compiled ahead.</summary>
[JsonSerializable(typeof(HouseChange))]
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
public sealed partial class ChangeJson : JsonSerializerContext;
