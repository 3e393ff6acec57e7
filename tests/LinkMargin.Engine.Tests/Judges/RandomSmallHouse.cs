using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// Small houses of one to three levels for judges that try every surface: rooms in a grid that is turned by any angle, openings
/// of all kinds, low and hanging walls, solid, bulk and hollow fixtures, floors of several layers with a void. Lengths are no
/// round numbers, so that no line meets an edge by chance: what a line through an edge meets is a rule, not geometry, and has
/// tests of its own. Floors have no joists, whose share is for <c>RibShareTests</c>.
/// </summary>
internal sealed class RandomSmallHouse(int seed)
{
    private static readonly Material[] Materials =
    [
        SimpleHouse.Material("board", 2.1), SimpleHouse.Material("brick", 6.4), SimpleHouse.Material("block", 11.3), SimpleHouse.Material("foil", 33),
    ];

    private static readonly Material Leaf = SimpleHouse.Material("leaf", 2.7);

    private static readonly Material Water =
        SimpleHouse.Material("water", 30) with { Form = LossForm.Bulk, ThicknessMetres = 0.3 };

    private readonly Random random = new(seed);

    internal House Make()
    {
        double turn = Between(0, 360);
        double[] xs = Cuts(), ys = Cuts();
        var levels = new List<Level>();
        double elevation = 0;
        int many = random.Next(1, 4);
        for (int i = 0; i < many; i++)
        {
            double height = Between(2.2, 2.8);
            var above = i + 1 < many ? Floor(xs, ys, turn) : null;
            levels.Add(new Level($"level {i}", elevation, height)
            {
                Rooms = [.. RoomsOf(xs, ys, turn)],
                Walls = [.. WallsOf(i, xs, ys, turn, height)],
                Above = above,
            });
            elevation += height + (above?.BuildUp.ThicknessMetres ?? 0);
        }

        Fixture[] fixtures = [.. Enumerable.Range(0, random.Next(0, 5)).Select(i => AFixture(i, many, xs[^1], ys[^1], turn))];
        (int Level, Point2 Plan, double Height) Place() =>
            (random.Next(many), Turned(new(Between(0.1, xs[^1] - 0.1), Between(0.1, ys[^1] - 0.1)), turn), Between(0.2, 1.9));
        return new House(
            "house",
            levels,
            fixtures,
            [.. Enumerable.Range(0, 2).Select(i => Place()).Select((p, i) => new Spot($"spot {i}", p.Level, p.Plan, p.Height))],
            [.. Enumerable.Range(0, 4).Select(i => Place()).Select((p, i) => new Seat($"seat {i}", p.Level, p.Plan, p.Height, null, 15))],
            SimpleHouse.Radio,
            SimpleHouse.Radio);
    }

    private double Between(double least, double greatest) => least + ((greatest - least) * random.NextDouble());

    private Material AMaterial() => Materials[random.Next(Materials.Length)];

    private double[] Cuts()
    {
        var cuts = new List<double> { 0 };
        for (int i = random.Next(1, 4); i > 0; i--)
        {
            cuts.Add(cuts[^1] + Between(1.8, 4.2));
        }

        return [.. cuts];
    }

    private static Point2 Turned(Point2 at, double degrees)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(degrees));
        return new((cos * at.X) - (sin * at.Y), (sin * at.X) + (cos * at.Y));
    }

    private static IEnumerable<Room> RoomsOf(double[] xs, double[] ys, double turn) =>
        from c in Enumerable.Range(0, xs.Length - 1)
        from r in Enumerable.Range(0, ys.Length - 1)
        select new Room($"room {c} {r}", Rectangle(xs[c], xs[c + 1], ys[r], ys[r + 1], turn));

    private static Polygon Rectangle(double left, double right, double bottom, double top, double turn) => new(
        [Turned(new(left, bottom), turn), Turned(new(right, bottom), turn), Turned(new(right, top), turn), Turned(new(left, top), turn)]);

    private IEnumerable<Wall> WallsOf(int level, double[] xs, double[] ys, double turn, double height)
    {
        for (int c = 0; c < xs.Length; c++)
        {
            for (int r = 0; r < ys.Length; r++)
            {
                bool isOuter = c == 0 || c == xs.Length - 1;
                if (r + 1 < ys.Length && (isOuter || random.Next(6) > 0))
                {
                    yield return AWall($"wall {level} {c} {r} north", new(xs[c], ys[r]), new(xs[c], ys[r + 1]), turn, height);
                }

                isOuter = r == 0 || r == ys.Length - 1;
                if (c + 1 < xs.Length && (isOuter || random.Next(6) > 0))
                {
                    yield return AWall($"wall {level} {c} {r} east", new(xs[c], ys[r]), new(xs[c + 1], ys[r]), turn, height);
                }
            }
        }
    }

    private Wall AWall(string name, Point2 start, Point2 end, double turn, double height)
    {
        (start, end) = random.Next(2) == 0 ? (start, end) : (end, start);
        double low = random.Next(10) == 0 ? Between(0.4, 1) : 0, high = random.Next(8) == 0 ? Between(1.1, 1.9) : height;
        var wall = new Wall(name, Turned(start, turn), Turned(end, turn), low, high, AMaterial());
        var openings = new List<Opening>();
        double at = Between(0.05, 1);
        while (at + 0.5 < wall.LengthMetres && openings.Count < 2 && random.Next(3) > 0)
        {
            double width = Math.Min(Between(0.4, 1.2), wall.LengthMetres - at - 0.05);
            double sill = Math.Max(low, random.Next(2) == 0 ? 0 : Between(0.3, 0.9));
            openings.Add(new Opening(
                $"{name} opening {openings.Count}",
                OpeningKind.Door,
                at,
                width,
                sill,
                Math.Min(Between(0.6, 2), high - sill),
                random.Next(4) == 0 ? null : Leaf,
                random.Next(3) == 0));
            at += width + Between(0.1, 1);
        }

        return wall with { Openings = openings };
    }

    private FloorAbove Floor(double[] xs, double[] ys, double turn)
    {
        FloorLayer[] layers =
        [
            .. Enumerable.Range(0, random.Next(1, 4)).Select(i => new FloorLayer(i == 1 ? null : AMaterial(), Between(0.02, 0.15), null)),
        ];
        double left = Between(0.1, xs[^1] - 1.2), bottom = Between(0.1, ys[^1] - 1.2);
        Polygon[] voids = random.Next(2) == 0 ? [] : [Rectangle(left, left + Between(0.5, 1), bottom, bottom + Between(0.5, 1), turn + 7)];
        return new FloorAbove(new FloorBuildUp("build-up", layers, "invented for tests"), null, voids);
    }

    private Fixture AFixture(int number, int levels, double width, double depth, double turn)
    {
        bool isShell = random.Next(2) == 0;
        double from = random.Next(2) == 0 ? 0 : Between(0.1, 0.7);
        return new Fixture(
            $"fixture {number}",
            random.Next(levels),
            Turned(new(Between(0.6, width - 0.6), Between(0.6, depth - 0.6)), turn),
            Between(0.2, 1.1),
            Between(0.2, 1.1),
            Between(0, 360),
            from,
            from + Between(0.3, 1.4),
            !isShell && random.Next(3) == 0 ? Water : AMaterial())
        {
            IsShell = isShell,
            OpenSides = isShell ? (BoxSides)random.Next(64) : BoxSides.None,
        };
    }
}
