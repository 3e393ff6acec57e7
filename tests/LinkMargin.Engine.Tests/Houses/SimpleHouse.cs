using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Links;
using LinkMargin.Engine.Tests.Propagation;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>Small houses to be worked by hand, with radios of 0 dBm, 0 dBi and −90 dBm.</summary>
internal static class SimpleHouse
{
    internal const double HeightMetres = 2.4;

    internal static readonly Radio Radio = new(
        "radio", PowerLevel.FromDbm(0), 0, PowerLevel.FromDbm(-90), 0, 0, "invented for tests");

    internal static Material Material(string name, double lossDb) => new(name, lossDb, 1, "invented for tests");

    internal static Wall FullWall(string name, Point2 start, Point2 end, double lossDb) =>
        new(name, start, end, 0, HeightMetres, Material(name, lossDb));

    internal static House Of(params Level[] levels) => new("house", levels, [], [], [], Radio, Radio) { Surroundings = SubstanceTable.Surroundings };

    internal static House OfWalls(params Wall[] walls) => Of(new Level("level", 0, HeightMetres) { Walls = walls });

    internal static House OfFixture(Fixture fixture) => OfWalls() with { Fixtures = [fixture] };

    /// <summary>What a line meets.</summary>
    internal static IReadOnlyList<Crossing> Crossings(House house, Point3 from, Point3 to) =>
        DirectLinks.Path(Scene.Compile(house), from, to).Crossings;

    /// <summary>The names of what a line meets, in order.</summary>
    internal static string[] Names(House house, Point3 from, Point3 to) =>
        [.. Crossings(house, from, to).Select(c => c.Name)];
}
