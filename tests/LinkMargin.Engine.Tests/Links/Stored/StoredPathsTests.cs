using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links.Stored;

/// <summary>Stored paths say what the model says, with the table's losses and with others.</summary>
public sealed class StoredPathsTests
{
    // What is left out or faded in by the least power that counts, 0.02 dB a path, is settled at the table's values; and what a
    // mirror throws back, and a whole floor's many layers, follow a shift only nearly.
    private const double ShiftedDb = 0.25;

    // Links that have lost more are out of any radio's hearing, and many weak paths at the edge of what counts make them up.
    private const double LostDb = 95;

    [Theory, Law]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void With_the_tables_losses_every_link_is_as_the_model_has_it(ModelDepth depth) => RoomedHouse.Any.ForAll(
        house =>
        {
            var model = new LinkModel(house, depth);
            var stored = StoredPaths.Of(model, house.Spots, house.Seats);
            LinkBudget[] budgets = [.. house.Spots.SelectMany(spot => LinkEvaluation.Budgets(model, spot, house.Seats))];
            double[] none = new double[stored.Parameters.Count];
            Assert.Equal(budgets.Length, stored.Links.Count);
            Assert.All(budgets.Zip(stored.Links), pair => Assert.Equal(
                Math.Min(LayeredSlab.GreatestLossDb, pair.First.PathLossDb), pair.Second.PathLossDb(none), 1e-9));
        },
        cases: 30);

    [Fact, Law]
    public void With_one_material_a_decibel_worse_every_link_is_as_in_a_house_built_of_it() => RoomedHouse.Any.ForAll(
        house =>
        {
            var model = new LinkModel(house);
            var stored = StoredPaths.Of(model, house.Spots, house.Seats);

            // What takes next to nothing throws next to nothing back, and a little more of both when it takes more.
            Material? material = house.Levels[0].Walls.Select(wall => wall.Material).FirstOrDefault(m => m.LossDb >= 3);
            if (material is null)
            {
                return;
            }

            double[] shifts = new double[stored.Parameters.Count];
            for (int i = 0; i < stored.Materials.Count; i++)
            {
                shifts[i] = stored.Materials[i].Name == material.Name ? 1 : 0;
            }

            House worse = WithWorse(house, material.Name);
            var there = new LinkModel(worse);
            LinkBudget[] budgets = [.. worse.Spots.SelectMany(spot => LinkEvaluation.Budgets(there, spot, worse.Seats))];
            Assert.All(
                budgets.Zip(stored.Links).Where(pair => pair.First.PathLossDb < LostDb),
                pair => Assert.Equal(pair.First.PathLossDb, pair.Second.PathLossDb(shifts), ShiftedDb));
        },
        cases: 30);

    /// <summary>
    /// The slopes of the diffuse field come from the seat where a spot is not one of the house's, and from the spot where it is: two solutions of
    /// shifted fields, each with a residual of 1e-4 in every cell, 0.0004 dB.
    /// </summary>
    [Fact, Law]
    public void A_spot_that_is_tried_depends_on_losses_like_one_of_the_house() => RoomedHouse.Any.ForAll(
        house =>
        {
            StoredPaths own = StoredPaths.Of(new LinkModel(house), house.Spots, house.Seats), tried = StoredPaths.Of(new LinkModel(house with { Spots = [] }), house.Spots, house.Seats);
            for (int material = 0; material < own.Materials.Count; material++)
            {
                double[] shifts = new double[own.Parameters.Count];
                shifts[material] = 1;
                Assert.All(own.Links.Zip(tried.Links), pair => Assert.Equal(pair.First.PathLossDb(shifts), pair.Second.PathLossDb(shifts), 0.005));
            }
        },
        cases: 12);

    [Fact]
    public void A_shift_of_every_place_of_a_material_is_a_shift_of_the_material_but_for_the_diffuse_field()
    {
        House house = SimpleHouse.OfWalls(
            new Wall("one", new(2, -5), new(2, 5), 0, SimpleHouse.HeightMetres, SimpleHouse.Material("stud", 3)),
            new Wall("two", new(4, -5), new(4, 5), 0, SimpleHouse.HeightMetres, SimpleHouse.Material("stud", 3))) with
        {
            Spots = [new Spot("spot", 0, default, 1)],
            Seats = [new Seat("seat", 0, new(6, 0), 1, null, 15)],
        };
        var stored = StoredPaths.Of(new LinkModel(house), house.Spots, house.Seats);
        double[] everywhere = new double[stored.Parameters.Count], inPlaces = new double[stored.Parameters.Count];
        for (int i = 0; i < stored.Parameters.Count; i++)
        {
            bool isStud = stored.Materials[stored.Parameters[i].Material].Name == "stud";
            everywhere[i] = isStud && stored.Parameters[i].Place is null ? 2 : 0;
            inPlaces[i] = isStud && stored.Parameters[i].Place is not null ? 2 : 0;
        }

        double before = stored.Links[0].PathLossDb(new double[stored.Parameters.Count]);
        Assert.Equal(stored.Links[0].PathLossDb(everywhere), stored.Links[0].PathLossDb(inPlaces), 1e-9);
        Assert.Equal(before + 4, stored.Links[0].PathLossDb(everywhere), 0.1); // two walls in the way of nearly all that arrives
    }

    [Fact, Law]
    public void The_gradient_is_the_slope() => RoomedHouse.Any.ForAll(
        house =>
        {
            var stored = StoredPaths.Of(new LinkModel(house), house.Spots, house.Seats);
            double[] shifts = [.. stored.Parameters.Select((_, i) => Math.Sin(i))], gradient = new double[shifts.Length];
            foreach (StoredLink link in stored.Links)
            {
                double here = link.PathLossDb(shifts, gradient);
                Assert.Equal(link.PathLossDb(shifts), here, 1e-12);
                const double Step = 1e-4;
                for (int i = 0; i < Math.Min(8, shifts.Length); i++)
                {
                    shifts[i] += Step;
                    Assert.Equal((link.PathLossDb(shifts) - here) / Step, gradient[i], 1e-3);
                    shifts[i] -= Step;
                }
            }
        },
        cases: 10);

    private static House WithWorse(House house, string name)
    {
        return house with
        {
            Levels =
            [
                .. house.Levels.Select(level => level with
                {
                    Walls = [.. level.Walls.Select(wall => wall with { Material = Worse(wall.Material), Openings = [.. wall.Openings.Select(OfWorse)] })],
                }),
            ],
            Fixtures = [.. house.Fixtures.Select(fixture => fixture with { Material = Worse(fixture.Material) })],
        };

        Opening OfWorse(Opening opening) => opening.Leaf is Material leaf ? opening with { Leaf = Worse(leaf) } : opening;

        Material Worse(Material material) => material.Name == name
            ? material with { LossDb = material.LossDb + 1, ThroughDb = material.ThroughDb + 1 }
            : material;
    }
}
