using System.Text.Json.Serialization;

namespace LinkMargin.Files.Changes;

/// <summary>
/// One change of a house as a journal stores it and a page sends it: its kind, and those other members that the kind uses.
/// Lengths are metres, angles degrees anticlockwise from east.
/// </summary>
/// <param name="Kind">One of <see cref="ChangeKinds"/>.</param>
public sealed record HouseChange(string Kind)
{
    /// <summary>The spot, seat, opening, wall or fixture that changes; or the new radio.</summary>
    public string? Name { get; init; }

    /// <summary>Its level after the change; 0 is the lowest.</summary>
    public int? Level { get; init; }

    /// <summary>Position on the plan, metres east.</summary>
    public double? X { get; init; }

    /// <summary>Position on the plan, metres north.</summary>
    public double? Y { get; init; }

    /// <summary>Height above that level's floor, metres.</summary>
    public double? Height { get; init; }

    /// <summary>Where a player faces.</summary>
    public double? Degrees { get; init; }

    /// <summary>Whether an opening is open.</summary>
    public bool? Open { get; init; }

    /// <summary>Material of a wall or a panel.</summary>
    public string? Material { get; init; }

    /// <summary>A side of a fixture: a compass word, <c>top</c> or <c>bottom</c>.</summary>
    public string? Side { get; init; }

    /// <summary>The seats with people on them.</summary>
    public IReadOnlyList<string>? Seats { get; init; }
}

/// <summary>The kinds of changes.</summary>
public static class ChangeKinds
{
    /// <summary>A spot moved.</summary>
    public const string MoveSpot = "move-spot";

    /// <summary>A seat moved.</summary>
    public const string MoveSeat = "move-seat";

    /// <summary>A seat turned.</summary>
    public const string TurnSeat = "turn-seat";

    /// <summary>A door or window opened or closed.</summary>
    public const string SetOpening = "set-opening";

    /// <summary>A wall of another material.</summary>
    public const string WallMaterial = "wall-material";

    /// <summary>A fixture removed.</summary>
    public const string RemoveFixture = "remove-fixture";

    /// <summary>A panel of a hollow fixture removed.</summary>
    public const string OpenSide = "open-side";

    /// <summary>A panel of a hollow fixture replaced.</summary>
    public const string SwapSide = "swap-side";

    /// <summary>Another console.</summary>
    public const string Console = "console";

    /// <summary>Other controllers.</summary>
    public const string Controller = "controller";

    /// <summary>A seat excluded, as by a wired controller.</summary>
    public const string RemoveSeat = "remove-seat";

    /// <summary>Other people on the seats. The house file does not change.</summary>
    public const string People = "people";
}

/// <summary>Changes as JSON, source-generated for ahead-of-time compilation.</summary>
[JsonSerializable(typeof(HouseChange))]
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
public sealed partial class ChangeJson : JsonSerializerContext;
