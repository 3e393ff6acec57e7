using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses;

/// <summary>Reads where somebody on a seat looks.</summary>
internal sealed class FacingReader(PlacementContext premises)
{
    private readonly Source source = premises.Source;

    /// <summary>Degrees anticlockwise from the x axis and the fixture looked at, if any; nulls where it cannot be told.</summary>
    /// <param name="node">What is written.</param>
    /// <param name="level">The seat's level; null where it could not be read.</param>
    /// <param name="at">The seat's place; null where it could not be read.</param>
    public (double? Degrees, string? Fixture) Read(Node node, int? level, Point2? at)
    {
        if (node is ScalarNode { IsNull: false } scalar && scalar.Text.Any(char.IsAsciiDigit) && Quantity.Degrees.Parse(scalar.Text).Fault is null)
        {
            return (ValueReader.Number(source, node, "facing", Quantity.Degrees, HouseLimits.Angle) is { } angle ? Facing.Once(angle) : null, null);
        }

        if (ValueReader.Name(source, node, "facing") is not { } word || premises.UnreadFixtures.Contains(word))
        {
            return default;
        }

        if (Sides.Directions.TryGetValue(word, out double direction))
        {
            return (direction, null);
        }

        if (!premises.FixturesByName.TryGetValue(word, out Fixture? fixture))
        {
            string[] words = [.. premises.FixturesByName.Keys, .. Sides.Directions.Keys];
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
                $"facing: the fixture {Quote.Of(word)} is on the level {Quote.Of(premises.NameOf(fixture.LevelIndex))}, another than the seat");
        }

        if (place.DistanceTo(fixture.Centre) < HouseLimits.SameHeight)
        {
            source.Error(node.Mark,
                $"facing: the seat is at the centre of the fixture {Quote.Of(word)}, so it faces no way; "
                    + "write a direction or move it");
            return default;
        }

        return (Facing.Degrees(place, fixture.Centre), word);
    }
}
