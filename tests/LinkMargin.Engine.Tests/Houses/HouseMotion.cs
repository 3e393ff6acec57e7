using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>Moves a whole house over the plan: mirrored about the y axis if wanted, then turned, then moved.</summary>
/// <param name="Mirrored">Whether x becomes −x first.</param>
/// <param name="TurnDegrees">Turned about the origin, anticlockwise.</param>
/// <param name="Step">Moved by this, metres.</param>
internal sealed record HouseMotion(bool Mirrored, double TurnDegrees, Point2 Step)
{
    /// <summary>Any motion, right angles and none at all among them.</summary>
    internal static readonly Gen<HouseMotion> Any =
        from mirrored in Gen.Bool
        from turn in Gen.OneOf(Gen.OneOf(0.0, 90, 180, 45, 30), Gen.Double[-180, 180])
        from x in Gen.OneOf(Gen.Const(0.0), Gen.Double[-50, 50])
        from y in Gen.OneOf(Gen.Const(0.0), Gen.Double[-50, 50])
        select new HouseMotion(mirrored, turn, new Point2(x, y));

    internal Point2 Of(Point2 p)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(TurnDegrees));
        double x = Mirrored ? -p.X : p.X;
        return new Point2((x * cos) - (p.Y * sin) + Step.X, (x * sin) + (p.Y * cos) + Step.Y);
    }

    internal Line Of(Line line) => new(Of(line.From.Plan).At(line.From.Z), Of(line.To.Plan).At(line.To.Z));

    internal House Of(House house) => house with
    {
        Levels = [.. house.Levels.Select(Of)],
        Fixtures = [.. house.Fixtures.Select(Of)],
        Spots = [.. house.Spots.Select(s => s with { Plan = Of(s.Plan) })],
        Seats = [.. house.Seats.Select(s => s with
        {
            Plan = Of(s.Plan),
            FacingDegrees = (Mirrored ? 180 - s.FacingDegrees : s.FacingDegrees) + TurnDegrees,
        })],
    };

    private Level Of(Level level) => level with
    {
        Rooms = [.. level.Rooms.Select(r => r with { Outline = Of(r.Outline) })],
        Walls = [.. level.Walls.Select(w => w with { Start = Of(w.Start), End = Of(w.End) })],
        Above = level.Above is FloorAbove above
            ? above with { Joists = Of(above.Joists), Voids = [.. above.Voids.Select(Of)] }
            : null,
    };

    private Polygon Of(Polygon polygon) => new(polygon.Corners.Select(Of));

    private JoistLayout? Of(JoistLayout? joists)
    {
        if (joists is null)
        {
            return null;
        }

        // Mirrored, a joist that runs at θ runs at 180° − θ, and what lay to its left lies to its right.
        double run = (Mirrored ? 180 - joists.RunDegrees : joists.RunDegrees) + TurnDegrees;
        double? first = Mirrored ? -joists.FirstOffsetMetres : joists.FirstOffsetMetres;
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(run));
        return joists with { RunDegrees = run, FirstOffsetMetres = first + Point2.Dot(Step, new Point2(-sin, cos)) };
    }

    private Fixture Of(Fixture fixture) => fixture with
    {
        Centre = Of(fixture.Centre),
        TurnDegrees = (Mirrored ? -fixture.TurnDegrees : fixture.TurnDegrees) + TurnDegrees,
        OpenSides = Mirrored ? WestForEast(fixture.OpenSides) : fixture.OpenSides,
    };

    private static BoxSides WestForEast(BoxSides sides)
    {
        BoxSides kept = sides & ~(BoxSides.West | BoxSides.East);
        kept |= sides.HasFlag(BoxSides.West) ? BoxSides.East : BoxSides.None;
        return kept | (sides.HasFlag(BoxSides.East) ? BoxSides.West : BoxSides.None);
    }
}
