using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Propagation;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Where a formula is used outside its range, the path says so, and the link where that path counts.</summary>
public sealed class CautionTests
{
    private static readonly Material Concrete = SimpleHouse.Material("concrete", 15) with { Layers = SubstanceTable.Layers("concrete 100") };

    [Theory]
    [InlineData(-0.01, false)]
    [InlineData(0.01, true)]
    public void A_layered_wall_met_too_flat_is_said_at_a_crossing_and_at_a_reflection(double moreDegrees, bool isSaid)
    {
        House house = SimpleHouse.OfWalls(new Wall("party wall", new(-20, 0), new(20, 0), 0, SimpleHouse.HeightMetres, Concrete));
        double apart = 2 * 0.3 * Math.Tan(double.DegreesToRadians(LayeredPanel.GreatestComfortDegrees + moreDegrees));
        foreach ((double side, PathKind kind) in new[] { (1.0, PathKind.Direct), (-1, PathKind.Reflected) })
        {
            LinkBudget budget = OneLink.Of(house, new(-apart / 2, -0.3, 1), new(apart / 2, side * 0.3, 1));
            PathBudget path = budget.Paths.Single(p => p.Path.Kind == kind
                && (kind == PathKind.Direct || p.Turns[0].Name == "party wall"));
            Assert.Equal(isSaid, path.Cautions.Count == 1);
            Assert.All(path.Cautions, caution => Assert.StartsWith("'party wall' is hit at more than 85 deg", caution, StringComparison.Ordinal));
            Assert.Equal(isSaid && budget.ShareOf(path) >= LinkBudget.LeastShareOfCaution, budget.Cautions.Intersect(path.Cautions).Any());
        }
    }

    [Fact]
    public void A_wall_without_layers_has_one_loss_at_all_angles_and_no_caution()
    {
        House house = SimpleHouse.OfWalls(SimpleHouse.FullWall("party wall", new(-20, 0), new(20, 0), 6));
        Assert.All(OneLink.Of(house, new(-8, -0.3, 1), new(8, 0.3, 1)).Paths, path =>
            Assert.DoesNotContain(path.Cautions, caution => caution.Contains("party wall", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_path_that_brings_little_does_not_caution_the_link()
    {
        var path = new PathBudget(new TracedPath(PathKind.Direct, [default, new(1, 0, 0)], 1, []), 40, [], 40) { Bases = [] };
        PathBudget weak = path with { LossDb = 40 - (10 * Math.Log10(LinkBudget.LeastShareOfCaution / (1 - LinkBudget.LeastShareOfCaution))) - 1e-9, Cautions = ["rough"] };
        Assert.Equal(["rough"], Of(weak).Cautions);
        Assert.Empty(Of(weak with { LossDb = weak.LossDb + 0.01 }).Cautions);

        LinkBudget Of(PathBudget other) => OneLink.Of(SimpleHouse.OfWalls(), default, new(1, 0, 0)) with
        {
            Paths = [path, other],
            PathLossDb = -10 * Math.Log10(Math.Pow(10, -path.LossDb / 10) + Math.Pow(10, -other.LossDb / 10)),
        };
    }
}
