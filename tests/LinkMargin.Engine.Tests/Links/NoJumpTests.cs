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

    // Links that have lost more than this are out of any radio's hearing in ordinary play. Behind metal the front's edges fade
    // out at the end of its reach, by up to some decibels a centimetre.
    private const double LostDb = 80;

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
                    steps += Walk(model, links, seat, (StepMetres * new Point2(Math.Cos(direction), Math.Sin(direction))));
                }
            }
        }

        Assert.InRange(steps, 10_000, int.MaxValue); // enough ground was covered
    }

    private static int Walk(LinkModel model, SpotModel links, Seat seat, Point2 step)
    {
        var buffer = new TraceBuffer();
        Point3 hands = model.House.PositionOf(seat), console = model.House.PositionOf(links.Spot);
        double? before = null;
        int steps = 0;
        for (int i = 0; i < 200 && IsClear(model, seat.LevelIndex, hands, console); i++)
        {
            double lossDb = links.PathLossDb(hands, seat.FacingDegrees, buffer);
            if (before is double was && Math.Min(was, lossDb) < LostDb)
            {
                Assert.True(
                    Math.Abs(lossDb - was) <= MostDb,
                    $"from {was:F2} to {lossDb:F2} dB in {StepMetres} m at {hands}, console at {console}");
                steps++;
            }

            before = lossDb;
            hands = (hands.Plan + step).At(hands.Z);
        }

        return steps;
    }

    private static bool IsClear(LinkModel model, int level, Point3 hands, Point3 console) =>
        hands.DistanceTo(console) > FromConsoleMetres
        && model.House.Levels[level].Rooms.Any(room => room.Outline.Contains(hands.Plan))
        && model.House.Levels[level].Walls.All(wall => DistanceTo(wall, hands.Plan) > ClearMetres)
        && model.Scene.Boxes.All(box => box.Level != level || box.DepthOf(hands.Plan) < -ClearMetres);

    private static double DistanceTo(Wall wall, Point2 at)
    {
        Point2 along = wall.End - wall.Start;
        double share = Math.Clamp(Point2.Dot(at - wall.Start, along) / Point2.Dot(along, along), 0, 1);
        return at.DistanceTo(wall.Start + (share * along));
    }
}
