using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Propagation;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>Houses of one to three levels with everything a house file may hold, spots inside fixtures included.</summary>
internal static class RandomHouse
{
    private static readonly Gen<Radio> AnyRadio =
        from power in Gen.Double[-6, 20]
        from gain in Gen.Double[-6, 3]
        from sensitivity in Gen.Double[-100, -70]
        from grip in Gen.Double[0, 12]
        select new Radio(
            "radio", PowerLevel.FromDbm(power), gain, PowerLevel.FromDbm(sensitivity), grip, 2, "invented for tests");

    private static readonly Gen<Level> AnyLevel =
        from decimetres in Gen.Int[22, 30]
        from walls in RandomWalls.Of(decimetres / 10.0)
        from above in RandomFloor.Any
        select new Level("level", 0, decimetres / 10.0) { Walls = walls, Above = above };

    /// <summary>A house.</summary>
    internal static readonly Gen<House> Any =
        from levels in AnyLevel.Array[1, 3]
        from spare in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 0.1])
        from fixtures in RandomFixture.On(levels.Length).Array[0, 5]
        from spots in Place(levels.Length, fixtures).Array[1, 3]
        from seats in Place(levels.Length, fixtures).Array[1, 4]
        from together in Gen.Int[0, 7]
        from console in AnyRadio
        from controller in AnyRadio
        select new House(
            "house",
            Stacked(levels, spare),
            fixtures,
            [.. spots.Select((p, i) => new Spot($"spot {i}", p.Level, p.Plan, p.Height))],
            [.. (together == 0 ? [.. seats, spots[0]] : seats)
                .Select((p, i) => new Seat($"seat {i}", p.Level, p.Plan, p.Height, null, 15))],
            console,
            controller)
        {
            Surroundings = SubstanceTable.Surroundings,
        };

    // Somewhere on a level, or at the heart of a fixture.
    private static Gen<(int Level, Point2 Plan, double Height)> Place(int levels, Fixture[] fixtures) =>
        from level in Gen.Int[0, levels - 1]
        from plan in RandomPlace.OnPlan
        from height in RandomPlace.Height
        from fixture in Gen.Int[0, 8]
        select fixture < fixtures.Length ? Heart(fixtures[fixture]) : (level, plan, height);

    private static (int Level, Point2 Plan, double Height) Heart(Fixture fixture) =>
        (fixture.LevelIndex, fixture.Centre, (fixture.FromMetres + fixture.ToMetres) / 2);

    private static Level[] Stacked(Level[] levels, double spareMetres)
    {
        var stacked = new Level[levels.Length];
        double elevation = 0;
        for (int i = 0; i < levels.Length; i++)
        {
            FloorAbove? above = i + 1 < levels.Length ? levels[i].Above : null;
            stacked[i] = levels[i] with { Name = $"level {i}", ElevationMetres = elevation, Above = above };
            elevation += levels[i].HeightMetres + spareMetres + (above?.BuildUp.ThicknessMetres ?? 0);
        }

        return stacked;
    }
}
