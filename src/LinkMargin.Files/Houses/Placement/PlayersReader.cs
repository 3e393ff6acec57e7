using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Placement;

/// <summary>Reads where the players of one seat are: all at its place, side by side there, or each at a place of their own.</summary>
internal sealed class PlayersReader(MappingReader seat)
{
    /// <summary>Whether each player's place is written.</summary>
    public bool AreListed { get; } = seat.Has("players") && seat.Optional("players") is SequenceNode;

    /// <summary>Every player's place, at least one; null, with an error recorded, if they cannot be determined.</summary>
    /// <param name="at">The seat's place; null if it is not written or could not be read.</param>
    /// <param name="facingDegrees">Where they face, so that they sit side by side and not in line; null if unknown.</param>
    public IReadOnlyList<Point2>? Read(Point2? at, double? facingDegrees)
    {
        if (!seat.Has("players"))
        {
            return seat.Required("at") is null || at is not { } alone ? null : [alone];
        }

        if (seat.Optional("players") is not { } node)
        {
            return null;
        }

        return AreListed ? Listed(node) : SideBySide(node, at, facingDegrees);
    }

    private IReadOnlyList<Point2>? Listed(Node node)
    {
        if (seat.Has("at"))
        {
            seat.Source.Error(
                seat.MarkOf("at"), "'players' says where each player is, so 'at' is not needed; remove it, or write 'players' as a number");
            return null;
        }

        IReadOnlyList<Point2>? places = PlaceReader.Line(seat.Source, node, "players", 1);
        if (places?.Count > HouseLimits.Players.Greatest)
        {
            seat.Source.Error(node.Mark, FormattableString.Invariant(
                $"players: {places.Count} players on one seat, but {HouseLimits.Players} are allowed; write another seat"));
            return null;
        }

        return places;
    }

    private Point2[]? SideBySide(Node node, Point2? at, double? facingDegrees)
    {
        double? written = ValueReader.Number(seat.Source, node, "players", Quantity.Plain, HouseLimits.Players);
        bool hasPlace = seat.Required("at") is not null;
        if (written is not { } count || !hasPlace || at is not { } middle)
        {
            return null;
        }

        if (count != Math.Floor(count))
        {
            seat.Source.Error(node.Mark, FormattableString.Invariant($"players: {count} is not a whole number of players"));
            return null;
        }

        // The row runs to the right of a player who faces that way; to the east if the direction is unknown.
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians((facingDegrees ?? 90) - 90));
        return [.. Enumerable.Range(0, (int)count).Select(i =>
            middle + ((i - ((count - 1) / 2)) * HouseLimits.BesideMetres * new Point2(cos, sin)))];
    }
}
