using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>The solver of the exchange between surfaces, in two rooms of which one has a steel rack that is open to a wall close by.</summary>
public sealed class ExchangeSolverTests
{
    // Far below what any margin shows, far above rounding.
    private const double Same = 1e-10;

    // Each step divides the residual by about three; twelve digits take 22 or so.
    private const int MostSteps = 24;

    private static readonly Point3 InRack = new(3.5, 3.6, 1), InRoom = new(1, 1, 1.2);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_solution_satisfies_the_exchange(bool withReflection)
    {
        (DiffuseHouse house, SurfaceExchange exchange) = TwoRooms();
        foreach (Point3 console in new[] { InRack, InRoom })
        {
            double[] atFirst = house.Of(console).FirstStrikes(console), strikes = house.Shell.Solver.Strikes(atFirst, withReflection);
            double[] follow = exchange.Struck(exchange.Sent(strikes, withReflection));
            Assert.All(strikes, (strike, node) => Assert.Equal(atFirst[node] + follow[node], strike, Same * (1 + strikes.Max())));
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_solution_takes_few_steps_from_nothing_and_from_too_much(bool withReflection)
    {
        (DiffuseHouse house, _) = TwoRooms();
        foreach (Point3 console in new[] { InRack, InRoom })
        {
            double[] atFirst = house.Of(console).FirstStrikes(console);
            double[] strikes = house.Shell.Solver.Strikes(atFirst, withReflection, null, ExchangeSolver.LeastShare, out int steps);
            double[] again = house.Shell.Solver.Strikes(atFirst, withReflection, [.. strikes.Select(strike => 2 * strike)], ExchangeSolver.LeastShare, out int stepsAgain);
            Assert.All(strikes, (strike, node) => Assert.Equal(strike, again[node], Same * (1 + strikes.Max())));
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
