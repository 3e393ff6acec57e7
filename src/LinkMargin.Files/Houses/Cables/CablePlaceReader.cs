using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Houses.Placement;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Cables;

/// <summary>Reads where displays and devices are.</summary>
/// <param name="placement">Levels and fixtures.</param>
internal sealed class CablePlaceReader(PlacementContext placement)
{
    private readonly Source source = placement.Source;

    /// <summary>A place given by a fixture, or by level and coordinates; null, with an error recorded, if it cannot be determined.</summary>
    /// <param name="group">The display or device.</param>
    /// <param name="name">Its name.</param>
    /// <param name="fixtureKey">The key that names the fixture.</param>
    public CablePlace? Read(MappingReader group, string name, string fixtureKey)
    {
        double? height = fixtureKey == "inside" ? group.OptionalLength("height", HouseLimits.HeightOverFloor) : null;
        if (group.Has(fixtureKey) == group.Has("at"))
        {
            source.Error(group.Mark, $"{group.What} needs either '{fixtureKey}' or 'level' and 'at: [x, y, height]'");
            return null;
        }

        if (group.Has(fixtureKey))
        {
            if (group.OptionalName(fixtureKey) is not { } fixtureName || placement.UnreadFixtures.Contains(fixtureName))
            {
                return null;
            }

            if (!placement.FixturesByName.TryGetValue(fixtureName, out Fixture? fixture))
            {
                source.Error(group.MarkOf(fixtureKey), $"{fixtureKey}: no fixture is named {Quote.Of(fixtureName)}; {source.Advice(fixtureName, [.. placement.FixturesByName.Keys])}");
                return null;
            }

            CablePlace at = CablePlace.Of(fixture) with { Name = name };
            return height is { } metres ? at with { HeightMetres = metres } : at;
        }

        int? level = placement.LevelOf(group);
        Point3? place = group.Optional("at") is { } node ? PlaceReader.Space(source, node, "at") : null;
        if (level is not { } index || place is not { } found)
        {
            return null;
        }

        placement.CheckHeight(index, found.Z, group.MarkOf("at"), "at (height)");
        placement.CheckPlace(index, found.Plan, found.Z, group.MarkOf("at"), $"{group.What} {Quote.Of(name)}");
        return new CablePlace(name, index, found.Plan, found.Z, null);
    }
}
