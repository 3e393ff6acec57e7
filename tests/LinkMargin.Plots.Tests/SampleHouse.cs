using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Plots.Tests;

/// <summary>An invented house of three levels to draw. Its losses are round figures for drawing only.</summary>
internal static class SampleHouse
{
    private const string Source = "invented for drawing";

    private static readonly Material Block = new("blockwork-100", 8, 2, Source) { ThicknessMetres = 0.30 };
    private static readonly Material Stud = new("drywall-stud", 3, 1, Source) { ThicknessMetres = 0.10 };
    private static readonly Material Brick = new("brick-102", 6, 2, Source) { ThicknessMetres = 0.15 };
    private static readonly Material Board = new("board-partition", 2, 1, Source);
    private static readonly Material Glass = new("glass-double", 3, 1, Source) { ThicknessMetres = 0.024 };
    private static readonly Material Hollow = new("door-hollow", 2, 1, Source) { ThicknessMetres = 0.04 };
    private static readonly Material Steel = new("sheet-steel", 30, 5, Source) { ThicknessMetres = 0.002 };
    private static readonly Material Wood = new("cabinet-wood", 3, 1, Source) { ThicknessMetres = 0.018 };

    public static House Make()
    {
        Radio console = new("console-typical", PowerLevel.FromDbm(4), 0, PowerLevel.FromDbm(-90), 0, 2, Source);
        Radio controller = new("controller-typical", PowerLevel.FromDbm(4), -2, PowerLevel.FromDbm(-88), 6, 2, Source);
        return new("Heron Row", [Den(), Middle(), Attic()], Fixtures(), Spots(), Seats(), console, controller);
    }

    private static Level Den() => new("den", 0, 2.35)
    {
        Rooms =
        [
            Rectangle("games den", 0, 0, 6.4, 5.2),
            Rectangle("workshop", 6.4, 0, 10.2, 5.2),
            Rectangle("stair cupboard", 0, 5.2, 2.1, 7.6),
            Rectangle("passage", 2.1, 5.2, 6.4, 7.6),
            Rectangle("store", 6.4, 5.2, 10.2, 7.6),
        ],
        Walls =
        [
            Wall("south", 0, 0, 10.2, 0, Block, Window("den window", 1.2, 1.6), Window("bench window", 7.4, 1.2)),
            Wall("east", 10.2, 0, 10.2, 7.6, Block),
            Wall("north", 10.2, 7.6, 0, 7.6, Block, Door("garden door", 5.0, 0.9, isOpen: false)),
            Wall("west", 0, 7.6, 0, 0, Block),
            Wall("den | passage", 0, 5.2, 6.4, 5.2, Stud, Door("den door", 4.6, 0.84, isOpen: true)),
            Wall("den | workshop", 6.4, 0, 6.4, 5.2, Brick, Door("bench door", 3.6, 0.84, isOpen: false)),
            Wall("workshop | store", 6.4, 5.2, 10.2, 5.2, Stud, Gap("store gap", 1.4, 1.0)),
            Wall("cupboard | passage", 2.1, 5.2, 2.1, 7.6, Stud, Door("cupboard door", 0.9, 0.7, isOpen: false)),
            Wall("passage | store", 6.4, 5.2, 6.4, 7.6, Brick),
            Low("half wall", 3.0, 0, 3.0, 1.4, Brick),
        ],
        Above = Joisted(0, [new Polygon([new(3.9, 6.4), new(5.9, 6.4), new(5.9, 7.45), new(3.9, 7.45)])]),
    };

    private static Level Middle() => new("living floor", 2.65, 2.5)
    {
        Rooms =
        [
            Rectangle("living room", 0, 0, 6.0, 5.2),
            Rectangle("kitchen", 6.0, 0, 10.2, 4.0),
            Rectangle("landing", 2.6, 5.2, 6.0, 7.6),
            Rectangle("bath", 0, 5.2, 2.6, 7.6),
            new Room("study", new Polygon([new(6.0, 4.0), new(10.2, 4.0), new(10.2, 6.4), new(9.0, 7.6), new(6.0, 7.6)])),
        ],
        Walls =
        [
            Wall("south", 0, 0, 10.2, 0, Block, Window("bay", 1.0, 2.4), Window("kitchen window", 7.2, 1.4)),
            Wall("east", 10.2, 0, 10.2, 6.4, Block, Window("study window", 4.5, 1.2)),
            Wall("chamfer", 10.2, 6.4, 9.0, 7.6, Block),
            Wall("north", 9.0, 7.6, 0, 7.6, Block, Window("landing window", 4.4, 1.2)),
            Wall("west", 0, 7.6, 0, 0, Block),
            Wall("living | landing", 0, 5.2, 6.0, 5.2, Brick, Door("living door", 3.2, 0.84, isOpen: true)),
            Wall("living | kitchen", 6.0, 0, 6.0, 5.2, Stud, Gap("serving gap", 1.0, 1.8)),
            Wall("kitchen | study", 6.0, 4.0, 10.2, 4.0, Stud, Door("study door", 0.6, 0.8, isOpen: false)),
            Wall("landing | study", 6.0, 5.2, 6.0, 7.6, Stud),
            Wall("bath | landing", 2.6, 5.2, 2.6, 7.6, Board, Door("bath door", 0.5, 0.75, isOpen: false)),
        ],
        Above = Joisted(90, [new Polygon([new(3.9, 6.4), new(5.9, 6.4), new(5.9, 7.45), new(3.9, 7.45)])]),
    };

    private static Level Attic() => new("attic", 5.45, 2.3)
    {
        Rooms =
        [
            Rectangle("bunk room", 1.0, 0, 5.4, 5.2),
            Rectangle("loft", 5.4, 0, 10.2, 7.6),
            Rectangle("top landing", 1.0, 5.2, 5.4, 7.6),
        ],
        Walls =
        [
            Wall("south", 1.0, 0, 10.2, 0, Block, Window("gable", 1.4, 1.2)),
            Wall("east", 10.2, 0, 10.2, 7.6, Block, Window("loft window", 3.0, 1.6)),
            Wall("north", 10.2, 7.6, 1.0, 7.6, Block),
            Wall("west", 1.0, 7.6, 1.0, 0, Block),
            Wall("bunk | loft", 5.4, 0, 5.4, 5.2, Stud, Door("loft door", 4.0, 0.8, isOpen: true)),
            Wall("bunk | landing", 1.0, 5.2, 5.4, 5.2, Stud, Door("bunk door", 0.9, 0.8, isOpen: false)),
            Wall("landing | loft", 5.4, 5.2, 5.4, 7.6, Board),
        ],
    };

    private static Fixture[] Fixtures() =>
    [
        new("equipment rack", 0, new(0.75, 6.7), 0.7, 0.9, 0, 0, 1.9, Steel) { IsShell = true, OpenSides = BoxSides.East },
        new("den screen", 0, new(0.25, 2.6), 0.07, 1.8, 0, 0.7, 2.0, Steel),
        new("work bench", 0, new(9.3, 1.2), 0.7, 2.0, 0, 0, 0.9, Wood),
        new("arcade cabinet", 0, new(5.4, 0.9), 0.8, 0.7, 30, 0, 1.8, Wood),
        new("chimney breast", 1, new(0.45, 2.6), 0.6, 1.7, 0, 0, 2.5, Brick),
        new("bath tub", 1, new(1.0, 7.05), 1.6, 0.7, 0, 0, 0.6, Steel),
        new("hi-fi cabinet", 1, new(5.3, 4.6), 1.0, 0.45, -45, 0, 1.0, Wood) { IsShell = true, OpenSides = BoxSides.South },
        new("water tank", 2, new(9.4, 6.8), 1.0, 1.0, 15, 0, 1.2, Steel),
    ];

    private static Spot[] Spots() =>
    [
        new("den rack", 0, new(0.7, 6.7), 1.1),
        new("hi-fi shelf", 1, new(5.2, 4.5), 0.6),
        new("loft shelf", 2, new(6.0, 0.7), 1.5),
    ];

    private static Seat[] Seats() =>
    [
        new("den sofa left", 0, new(3.8, 2.2), 0.7, 180, 15),
        new("den sofa right", 0, new(3.8, 3.4), 0.7, 180, 15),
        new("bench stool", 0, new(8.5, 1.4), 0.9, 0, 10),
        new("living sofa", 1, new(3.2, 1.6), 0.7, 180, 15),
        new("kitchen counter", 1, new(8.6, 2.0), 1.0, 270, 10),
        new("study desk", 1, new(8.2, 6.2), 0.8, 90, 15),
        new("top bunk", 2, new(2.0, 1.2), 1.6, null, 15),
        new("bean bag", 2, new(8.0, 3.4), 0.5, 135, 15),
    ];

    private static Room Rectangle(string name, double x0, double y0, double x1, double y1) =>
        new(name, new Polygon([new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)]));

    private static Wall Wall(
        string name, double x0, double y0, double x1, double y1, Material material, params Opening[] openings) =>
        new(name, new(x0, y0), new(x1, y1), 0, 2.5, material) { Openings = openings };

    private static Wall Low(string name, double x0, double y0, double x1, double y1, Material material) =>
        new(name, new(x0, y0), new(x1, y1), 0, 1.1, material);

    private static Opening Door(string name, double offset, double width, bool isOpen) =>
        new(name, OpeningKind.Door, offset, width, 0, 2.0, Hollow, isOpen);

    private static Opening Window(string name, double offset, double width) =>
        new(name, OpeningKind.Window, offset, width, 0.9, 1.2, Glass, IsOpen: false);

    private static Opening Gap(string name, double offset, double width) =>
        new(name, OpeningKind.Gap, offset, width, 0, 2.1, null, IsOpen: true);

    private static FloorAbove Joisted(double runDegrees, IReadOnlyList<Polygon> voids)
    {
        var joists = new Ribs(Wood, 0.045, 0.225, 0.4);
        var buildUp = new FloorBuildUp(
            "timber-joist-225",
            [new FloorLayer(Wood, 0.02, null), new FloorLayer(null, 0.225, joists), new FloorLayer(Board, 0.0125, null)],
            Source);
        return new(buildUp, new JoistLayout(runDegrees, 0.4, null), voids);
    }
}
