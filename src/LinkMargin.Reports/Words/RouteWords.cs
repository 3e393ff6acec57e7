using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Runs;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Reports.Words;

/// <summary>The legs of a cable's route and the holes it takes, in words.</summary>
/// <param name="loaded">The house.</param>
internal sealed class RouteWords(LoadedHouse loaded)
{
    private LengthFormat Lengths => loaded.Lengths;

    /// <summary>Each leg of a route, in order.</summary>
    public IReadOnlyList<string> Legs(Route route) => [.. route.Legs.Select((_, i) => Leg(route, i))];

    /// <summary>The holes to bore for a route, each with its place.</summary>
    public IReadOnlyList<string> Holes(Route route) =>
        [.. Enumerable.Range(0, route.Legs.Count).Where(i => route.Legs[i].Holes > 0).Select(i => Leg(route, i))];

    /// <summary>Where a route turns into a leg.</summary>
    public static string Corner(RouteLeg leg) => leg.Kind switch
    {
        LegKind.ToWall => $"at the wall in '{leg.Where}'",
        LegKind.ToPassage => $"beside the passage in '{leg.Where}'",
        LegKind.AlongFloor => $"at the floor in '{leg.Where}'",
        LegKind.AlongCeiling => $"under the ceiling in '{leg.Where}'",
        LegKind.Riser => $"at the {(leg.To.Z > leg.From.Z ? "foot" : "top")} of the wall in '{leg.Where}'",
        LegKind.ThroughWall => $"at the hole through the wall '{leg.Where}'",
        LegKind.ThroughCeiling => $"at the hole in the ceiling of '{leg.Where}'",
        LegKind.ThroughFloor => $"at the hole in the floor of '{leg.Where}'",
        LegKind.ThroughPassage => $"at the passage '{leg.Where}'",
        _ => $"at the floor above '{leg.Where}'",
    };

    private string Leg(Route route, int index)
    {
        RouteLeg leg = route.Legs[index];
        string length = Lengths.Brief(leg.LengthMetres);
        return leg.Kind switch
        {
            LegKind.ToWall => $"{length} between the socket and the wall, in '{leg.Where}'",
            LegKind.ToPassage => $"{length} between the wall and the passage, in '{leg.Where}'",
            LegKind.AlongFloor => $"{length} along the wall at the floor, in '{leg.Where}'",
            LegKind.AlongCeiling => $"{length} along the wall under the ceiling, in '{leg.Where}'",
            LegKind.Riser => $"{length} {(leg.To.Z > leg.From.Z ? "up" : "down")} the wall, in '{leg.Where}'",
            LegKind.ThroughWall => $"a hole through the wall '{leg.Where}'{Between(route, index)}, {HeightOf(leg)} at {Middle(leg)}",
            LegKind.ThroughCeiling => $"a hole in the ceiling of '{leg.Where}'{Room(route, index)} at {Middle(leg)}",
            LegKind.ThroughFloor => $"a hole in the floor of '{leg.Where}'{Room(route, index)} at {Middle(leg)}",
            LegKind.ThroughSlab => $"a hole through the floor above '{leg.Where}', {length}{Room(route, index)} at {Middle(leg)}",
            LegKind.InFloor when leg.Holes == 0 => $"{length} in the floor above '{leg.Where}', along the joists",
            LegKind.InFloor => $"{length} in the floor above '{leg.Where}', through {Plural.Of(leg.Holes, "joist")}, from {At(leg.From)}{(leg.Corner is { } corner ? $" to {At(corner)}, then" : "")} to {At(leg.To)}",
            _ => $"{length} through the passage '{leg.Where}'",
        };
    }

    private string At(Point3 place) => PlaceWords.At(place.Plan, Lengths);

    private string Middle(RouteLeg leg) => At(leg.From + (0.5 * (leg.To - leg.From)));

    // A hole through a wall is where the cable runs: at the floor or under the ceiling, at exactly these heights.
    private string HeightOf(RouteLeg leg) => loaded.House.Levels.Any(level => level.CeilingMetres == leg.From.Z) ? "under the ceiling" : "at the floor";

    private static string Between(Route route, int index) => (RoomOf(route, index - 1), RoomOf(route, index + 1)) switch
    {
        ({ } one, { } other) => $" between '{one}' and '{other}'",
        ({ } one, null) => $" from '{one}'",
        (null, { } other) => $" into '{other}'",
        _ => "",
    };

    // The room that a hole in a ceiling or floor is made from: that of the leg before it or, where the cable comes out of the floor, after it.
    private static string Room(Route route, int index) => (RoomOf(route, index - 1) ?? RoomOf(route, index + 1)) is { } room ? $", in '{room}'," : "";

    // Only these legs are named after a room.
    private static string? RoomOf(Route route, int index) => index >= 0 && index < route.Legs.Count
        && route.Legs[index] is { Kind: LegKind.ToWall or LegKind.ToPassage or LegKind.AlongFloor or LegKind.AlongCeiling or LegKind.Riser } leg ? leg.Where : null;
}
