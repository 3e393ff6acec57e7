using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Reports.Tests;

/// <summary>Two levels, a wall, a floor with joists, two spots, three seats: small enough to follow by hand.</summary>
internal static class SampleHouse
{
    private static readonly Material Stud = new("stud", 3.0, 1, "made for tests");
    private static readonly Material Brick = new("brick", 6.5, 1, "made for tests");
    private static readonly Material Board = new("board", 2.25, 1, "made for tests");
    private static readonly Material Timber = new("timber", 6, 1, "made for tests");

    public static House House { get; } = Make();

    private static House Make()
    {
        var joists = new Ribs(Timber, 0.05, 0.2, 0.4);
        var buildUp = new FloorBuildUp("joisted", [new(Board, 0.02, null), new(null, 0.2, joists), new(Board, 0.01, null)], "made for tests");
        return new House(
            "Test House",
            [
                new Level("den", 0, 2.4)
                {
                    Rooms = [Room("games den", 0, 0, 4, 5), Room("passage", 4, 0, 8, 5)],
                    Walls = [new Wall("games den | passage", new Point2(4, 0), new Point2(4, 5), 0, 2.4, Brick)],
                    Above = new FloorAbove(buildUp, new JoistLayout(0, 0.4, null), []),
                },
                new Level("loft", 2.63, 2.2)
                {
                    Rooms = [Room("studio", 0, 0, 8, 5)],
                    Walls = [new Wall("screen wall", new Point2(2, 0), new Point2(2, 2), 0, 2.2, Stud)],
                },
            ],
            [],
            [new Spot("den rack", 0, new Point2(0.5, 0.5), 1), new Spot("loft shelf", 1, new Point2(7, 4), 1.5)],
            [
                new Seat("sofa", 0, new Point2(3, 2), 0.7, null, 15),
                new Seat("bench", 0, new Point2(7.5, 4.5), 0.7, null, 40),
                new Seat("desk", 1, new Point2(1, 1), 0.7, null, 20),
            ],
            new Radio("console-test", PowerLevel.FromDbm(6), 0, PowerLevel.FromDbm(-90), 0, 0, "made for tests"),
            new Radio("controller-test", PowerLevel.FromDbm(4), -2, PowerLevel.FromDbm(-88), 6, 0, "made for tests"));
    }

    private static Room Room(string name, double west, double south, double east, double north) =>
        new(name, new Polygon([new(west, south), new(east, south), new(east, north), new(west, north)]));
}
