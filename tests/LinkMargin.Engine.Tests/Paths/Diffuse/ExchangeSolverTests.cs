using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Plain;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>The solver of the exchange between surfaces, in two rooms of which one has a steel rack that is open to a wall close by.</summary>
public sealed class ExchangeSolverTests
{
    // Far below what any margin shows, far above rounding.
    private const double Same = 1e-10;

    // Each step divides the residual by about three; twelve digits take 22 or so.
    private const int MostSteps = 24;

    // Enough for a steel rack with one open side.
    private const int Flights = 400;

    private static readonly Point3 InRack = new(3.5, 3.6, 1), InRoom = new(1, 1, 1.2);

    [Fact]
    public void A_field_is_what_follows_facet_by_facet()
    {
        (DiffuseHouse house, SurfaceExchange exchange) = TwoRooms();
        foreach (Point3 console in new[] { InRack, InRoom })
        {
            DiffuseField field = house.Of(console);
            double[] first = Followed(field.AtFirst, false), mirrored = [.. first.Select((strike, i) => exchange.MirroredShares[i] * strike)];
            double[] once = Followed(PlainExchange.Struck(exchange, mirrored), false);
            double[] onwards = [.. first.Select((strike, i) => (exchange.ScatteredShares[i] * strike) + (exchange.ReflectedShares[i] * once[i]))];
            double[] rest = Followed(PlainExchange.Struck(exchange, onwards), true);
            IReadOnlyList<double> strikes = field.AllStrikes(house.Shell);
            Assert.All(strikes, (strike, i) => Assert.Equal(first[i] + once[i] + rest[i], strike, Same * (1 + strikes.Max())));
        }

        // All that strikes, flight by flight.
        double[] Followed(double[] atFirst, bool withReflection)
        {
            double[] all = [.. atFirst], next = atFirst;
            for (int flight = 0; flight < Flights; flight++)
            {
                next = PlainExchange.Struck(exchange, PlainExchange.Sent(exchange, next, withReflection));
                all = [.. all.Zip(next, (sum, more) => sum + more)];
            }

            return all;
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_solution_takes_few_steps_from_nothing_and_from_too_much(bool withReflection)
    {
        (DiffuseHouse house, _) = TwoRooms();
        ExchangeSolver solver = house.Shell.Solver;
        foreach (Point3 console in new[] { InRack, InRoom })
        {
            double[] sent = new double[solver.Patches.Layout.Count], source = new double[sent.Length];
            solver.Patches.GatherReflected(house.Of(console).AtFirst, source, house.Shell.Exchange.ReflectedShares, sent);
            solver.Patches.Follow(sent, source);
            double[] strikes = new double[source.Length], again = new double[source.Length];
            int steps = solver.Solve(source, [], withReflection, null, ExchangeSolver.LeastShare, strikes);
            int stepsAgain = solver.Solve(source, [], withReflection, [.. strikes.Select(strike => 2 * strike)], ExchangeSolver.LeastShare, again);
            Assert.All(strikes, (strike, patch) => Assert.Equal(strike, again[patch], Same * (1 + strikes.Max())));
            Assert.InRange(steps, 2, MostSteps);
            Assert.InRange(stepsAgain, 2, MostSteps);
        }
    }

    private static (DiffuseHouse House, SurfaceExchange Exchange) TwoRooms()
    {
        Material wall = SimpleHouse.Material("wall", 5), steel = SimpleHouse.Material("steel", 40);
        var rack = new Fixture("rack", 0, new Point2(3.5, 3.6), 0.6, 0.6, 0, 0.1, 2.0, steel) { IsShell = true, OpenSides = BoxSides.North };
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 4, 8], [0, 4]);
        var house = new DiffuseHouse(SimpleHouse.Of(new Level("level", 0, 2.4)
        {
            Walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, 2.4, wall))],
            Rooms = RoomGrid.Rooms([0, 4, 8], [0, 4]),
        }) with { Fixtures = [rack] });
        return (house, house.Shell.Exchange);
    }
}
