using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Somebody who walks from each seat of a house through the air, a centimetre a step, and the loss to each console.</summary>
internal static class CentimetreWalk
{
    internal const double StepMetres = 0.01;

    // Nearer than this to the console free space alone falls by half a decibel and more for each centimetre.
    private const double FromConsoleMetres = 0.3;

    // Links that have lost more than this are out of any radio's hearing.
    private const double LostDb = 110;

    // A console nearer to a wall than this is in it or on it, and so is the link's end there.
    private const double OnWallMetres = 0.02;

    // A place in a panel or a wall counts as beyond it: a step is looked at for what stands in it this much past its end, share of its length.
    private const double PastEnd = 0.01;

    private const int MostSteps = 200;

    /// <summary>All steps of all walks in a house, in a direction for each seat.</summary>
    /// <param name="house">The house.</param>
    /// <param name="radians">The direction of the first seat.</param>
    internal static IEnumerable<Step> Through(House house, double radians)
    {
        var model = new LinkModel(house);
        foreach (Spot spot in house.Spots)
        {
            SpotModel links = model.For(spot);
            foreach ((Seat seat, int number) in house.Seats.Select((seat, i) => (seat, i)))
            {
                double direction = radians + (2.4 * number);
                foreach (Step step in Walk(model, links, seat, StepMetres * new Point2(Math.Cos(direction), Math.Sin(direction))))
                {
                    yield return step;
                }
            }
        }
    }

    // Steps through the air of a room.
    private static IEnumerable<Step> Walk(LinkModel model, SpotModel links, Seat seat, Point2 step)
    {
        var buffer = new TraceBuffer();
        Point3 hands = model.House.PositionOf(seat);
        double atConsole = ToWallsMetres(model.House.Levels[model.House.LevelIndexAt(links.Console.Z)], links.Console.Plan);
        double most = atConsole < OnWallMetres ? atConsole : double.PositiveInfinity;
        Point3 last = hands;
        Level level = model.House.Levels[seat.LevelIndex];
        double before = double.NaN, clearBefore = 0, wallBefore = 0;
        for (int i = 0; i < MostSteps && IsInAir(model, seat.LevelIndex, hands, links.Console); i++)
        {
            double lossDb = links.PathLossDb(hands, seat.FacingDegrees, buffer), clear = Math.Min(most, ClearanceMetres(model, seat.LevelIndex, hands));
            double wall = ToWallsMetres(level, hands.Plan);
            if (i > 0 && Math.Min(before, lossDb) < LostDb)
            {
                yield return new Step(before, lossDb, Math.Min(clear, clearBefore), Math.Min(wall, wallBefore), last, hands, links.Console, seat.FacingDegrees);
            }

            (before, clearBefore, wallBefore, last) = (lossDb, clear, wall, hands);
            Point3 next = (hands.Plan + step).At(hands.Z);
            model.Scene.Trace(hands, hands.Towards(next, 1 + PastEnd), buffer);
            if (buffer.Count > 0 || IsBetween((FullSpotModel)links, hands, next, buffer))
            {
                yield break; // through a wall or a panel
            }

            hands = next;
        }
    }

    // Whether a wall or a panel stands between the places off surfaces where two ends are computed: a place in the plane of a shell's underside
    // passes its sides as well, though no line in that plane does.
    private static bool IsBetween(FullSpotModel links, Point3 one, Point3 other, TraceBuffer buffer)
    {
        TracedHouse house = links.House;
        house.Scene.Trace(house.Standoff.Of(one, ref buffer.Candidates), house.Standoff.Of(other, ref buffer.Candidates), buffer);
        return buffer.Count > 0;
    }

    private static bool IsInAir(LinkModel model, int level, Point3 hands, Point3 console) =>
        hands.DistanceTo(console) > FromConsoleMetres
        && (model.House.Levels[level].Rooms.Count == 0 || model.House.Levels[level].Rooms.Any(room => room.Outline.Contains(hands.Plan)))
        && model.Scene.Boxes.All(box => box.IsShell || !box.Holds(hands));

    // To walls and fixtures on the plan.
    private static double ClearanceMetres(LinkModel model, int level, Point3 hands) => model.Scene.Boxes
        .Where(box => box.Level == level)
        .Select(box => Math.Abs(box.DepthOf(hands.Plan)))
        .Append(ToWallsMetres(model.House.Levels[level], hands.Plan))
        .Min();

    private static double ToWallsMetres(Level level, Point2 at) =>
        level.Walls.Select(wall => DistanceTo(wall, at)).DefaultIfEmpty(double.PositiveInfinity).Min();

    private static double DistanceTo(Wall wall, Point2 at)
    {
        Point2 along = wall.End - wall.Start;
        double share = Math.Clamp(Point2.Dot(at - wall.Start, along) / Point2.Dot(along, along), 0, 1);
        return at.DistanceTo(wall.Start + (share * along));
    }
}

/// <summary>One step.</summary>
/// <param name="FromDb">Path loss before it, dB.</param>
/// <param name="ToDb">Path loss after it.</param>
/// <param name="ClearMetres">How near to a wall or fixture on the plan it comes, or how near the console is to a wall that it is on, metres.</param>
/// <param name="WallMetres">How near it comes to the middle line of a wall.</param>
/// <param name="Last">Where it starts.</param>
/// <param name="Hands">Where it ends.</param>
/// <param name="Console">Where the console is.</param>
/// <param name="Facing">Where the player looks, degrees; null for anywhere.</param>
internal readonly record struct Step(
    double FromDb, double ToDb, double ClearMetres, double WallMetres, Point3 Last, Point3 Hands, Point3 Console, double? Facing)
{
    // No wall is thinner than a centimetre.
    private const double HalfWallMetres = 0.005;

    /// <summary>Whether the hands are inside a wall: along its middle line a walk meets its end.</summary>
    internal bool IsInWall => WallMetres < HalfWallMetres;

    internal double JumpDb => Math.Abs(ToDb - FromDb);

    /// <summary>
    /// The most that one exact edge as near as the nearest surface, but no nearer than ends are computed to one, lets the level change in a step, and 0.3 dB.
    /// P.526 equation (31) is steepest at v = 0.1: 20/ln 10 dB for each step of v. The other end is far against that distance.
    /// </summary>
    internal double EdgeDb => (CentimetreWalk.StepMetres * 20 / Math.Log(10)
        * Math.Sqrt(2 / (Band.Bluetooth.Equivalent.WavelengthMetres * Math.Max(Standoff.Metres, ClearMetres)))) + 0.3;

    public override string ToString() =>
        $"from {FromDb:F2} to {ToDb:F2} dB in a centimetre at {At(Hands)}, {100 * ClearMetres:F1} cm from a surface, console at {At(Console)}";

    private static string At(Point3 place) => FormattableString.Invariant($"[{place.X:F4}, {place.Y:F4}, {place.Z:F4}]");
}
