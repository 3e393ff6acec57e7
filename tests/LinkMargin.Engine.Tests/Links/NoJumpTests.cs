using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Somebody who moves by a centimetre finds about the same level.</summary>
public sealed class NoJumpTests
{
    private const double StepMetres = 0.01;
    private const double MostDb = 1.5;

    // Nearer than this to a wall or a fixture the edge of its shadow is itself only some centimetres wide.
    private const double ClearMetres = 0.1;

    // Nearer than this to the console free space alone falls by half a decibel and more for each centimetre.
    private const double FromConsoleMetres = 0.3;

    // Links that have lost more than this are out of any radio's hearing.
    private const double LostDb = 110;

    private static readonly uint[] Seeds = [.. Enumerable.Range(1, 60).Select(i => (uint)i)];

    [Fact]
    public void A_step_of_a_centimetre_never_moves_the_local_mean_by_more_than_1_5_dB()
    {
        int steps = 0;
        foreach (uint seed in Seeds)
        {
            House house = RoomedHouse.Any.Generate(new PCG(seed, seed), null, out _);
            var model = new LinkModel(house);
            foreach (Spot spot in house.Spots)
            {
                SpotModel links = model.For(spot);
                foreach ((Seat seat, int number) in house.Seats.Select((seat, i) => (seat, i)))
                {
                    double direction = seed + (2.4 * number);
                    foreach (Step step in Walk(model, links, seat, StepMetres * new Point2(Math.Cos(direction), Math.Sin(direction))))
                    {
                        Assert.True(
                            Math.Abs(step.ToDb - step.FromDb) <= MostDb,
                            $"seed {seed}: from {step.FromDb:F2} to {step.ToDb:F2} dB in {StepMetres} m at {step.Hands}, console at {links.Console}");
                        steps++;
                    }
                }
            }
        }

        Assert.InRange(steps, 20_000, int.MaxValue); // enough ground was covered
    }

    // Steps through the air of a room, clear of everything at both ends.
    private static IEnumerable<Step> Walk(LinkModel model, SpotModel links, Seat seat, Point2 step)
    {
        var buffer = new TraceBuffer();
        Point3 hands = model.House.PositionOf(seat);
        double before = double.NaN;
        bool wasClear = false;
        for (int i = 0; i < 200 && IsInAir(model, seat.LevelIndex, hands, links.Console); i++)
        {
            double lossDb = links.PathLossDb(hands, seat.FacingDegrees, buffer);
            bool isClear = ClearanceMetres(model, seat.LevelIndex, hands) > ClearMetres;
            if (isClear && wasClear && Math.Min(before, lossDb) < LostDb)
            {
                yield return new Step(before, lossDb, hands);
            }

            (before, wasClear) = (lossDb, isClear);
            Point3 next = (hands.Plan + step).At(hands.Z);
            model.Scene.Trace(hands, next, buffer);
            if (buffer.Count > 0)
            {
                yield break; // through a wall or a panel
            }

            hands = next;
        }
    }

    private static bool IsInAir(LinkModel model, int level, Point3 hands, Point3 console) =>
        hands.DistanceTo(console) > FromConsoleMetres
        && model.House.Levels[level].Rooms.Any(room => room.Outline.Contains(hands.Plan))
        && model.Scene.Boxes.All(box => box.IsShell || !box.Holds(hands));

    // To walls and fixtures on the plan.
    private static double ClearanceMetres(LinkModel model, int level, Point3 hands) => model.House.Levels[level].Walls
        .Select(wall => DistanceTo(wall, hands.Plan))
        .Concat(model.Scene.Boxes.Where(box => box.Level == level).Select(box => Math.Abs(box.DepthOf(hands.Plan))))
        .Min();

    private static double DistanceTo(Wall wall, Point2 at)
    {
        Point2 along = wall.End - wall.Start;
        double share = Math.Clamp(Point2.Dot(at - wall.Start, along) / Point2.Dot(along, along), 0, 1);
        return at.DistanceTo(wall.Start + (share * along));
    }

    private readonly record struct Step(double FromDb, double ToDb, Point3 Hands);
}
