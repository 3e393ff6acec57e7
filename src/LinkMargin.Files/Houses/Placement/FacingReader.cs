using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Placement;

/// <summary>Reads where a person on a seat faces.</summary>
internal sealed class FacingReader(PlacementContext placement)
{
    private readonly Source source = placement.Source;

    /// <summary>Reads it; empty if it cannot be read.</summary>
    /// <param name="node">What is written.</param>
    /// <param name="level">The seat's level; null if it could not be read.</param>
    /// <param name="at">The seat's place; null if it could not be read.</param>
    public Gaze Read(Node node, int? level, Point2? at)
    {
        if (node is ScalarNode { IsNull: false } scalar && scalar.Text.Any(char.IsAsciiDigit) && Quantity.Degrees.Parse(scalar.Text).Fault is null)
        {
            return new(ValueReader.Number(source, node, "facing", Quantity.Degrees, HouseLimits.Angle) is { } angle ? Facing.Once(angle) : null, null);
        }

        if (ValueReader.Name(source, node, "facing") is not { } word || placement.UnreadFixtures.Contains(word))
        {
            return default;
        }

        if (Sides.Directions.TryGetValue(word, out double direction))
        {
            return new(direction, null);
        }

        if (!placement.FixturesByName.TryGetValue(word, out Fixture? fixture))
        {
            string[] words = [.. placement.FixturesByName.Keys, .. Sides.Directions.Keys];
            source.Error(node.Mark,
                $"facing: {Quote.Of(word)} is neither a fixture nor a direction (north, south-east, ..., "
                    + $"or degrees anticlockwise from east); {source.Advice(word, words)}");
            return default;
        }

        if (level is null || at is not { } place)
        {
            return default;
        }

        if (fixture.LevelIndex != level)
        {
            source.Warning(node.Mark,
                $"facing: the fixture {Quote.Of(word)} is on the level {Quote.Of(placement.NameOf(fixture.LevelIndex))}, not on the seat's");
        }

        if (place.DistanceTo(fixture.Centre) < HouseLimits.SameHeight)
        {
            source.Error(node.Mark,
                $"facing: the seat is at the centre of the fixture {Quote.Of(word)}, so it has no direction; "
                    + "write a direction or move it");
            return default;
        }

        return new(Facing.Degrees(place, fixture.Centre), word);
    }
}

/// <summary>Where a person faces.</summary>
/// <param name="Degrees">Degrees anticlockwise from the x axis; null where unknown.</param>
/// <param name="Fixture">The fixture the person faces; null if there is none.</param>
internal readonly record struct Gaze(double? Degrees, string? Fixture);
