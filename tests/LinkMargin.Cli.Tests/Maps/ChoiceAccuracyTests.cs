using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;

namespace LinkMargin.Cli.Tests.Maps;

/// <summary>The map of the choice against the exact margin to count on of spots put in its cells, full model, demo house.</summary>
public sealed class ChoiceAccuracyTests
{
    private const double HeightMetres = 0.4;
    private const int Cells = 40;

    [Fact]
    public void The_ground_is_within_what_its_caption_says_almost_everywhere()
    {
        const double CaptionDb = 0.2, WorstDb = 0.6; // 0.5 dB was the worst of 214 cells
        const int Living = 1;
        House house = SampleFile.HouseOf(DemoHouse.Text);
        var model = new LinkModel(house);
        var basis = new UncertaintyBasis(MaterialTablesFile.ReadBuiltIn().Tables!.Spreads!);
        var exact = new JudgeAtConfidence(basis);
        Field map = new ChoiceAtConfidence(model, new PlaceSearch(model, new PlaceRequest()), basis, UncertaintyBasis.UsualConfidence)
            .MapOf(Living, HeightMetres, 0.5, house.Spots[0]);
        int[] indoors = [.. Enumerable.Range(0, map.Grid.Count).Where(cell => !double.IsNaN(map.MarginDb[cell]))];
        var random = new Random(7);
        double[] errorsDb =
        [
            .. random.GetItems(indoors, Cells).Select(cell =>
            {
                Point2 at = map.Grid.CentreOf(cell % map.Grid.Columns, cell / map.Grid.Columns);
                return Math.Abs(map.MarginDb[cell] - exact.Score(model, new Spot("there", Living, at, HeightMetres), house.Seats).WeakestHeadroomDb);
            }).Order(),
        ];
        Assert.InRange(errorsDb[Cells * 9 / 10], 0, CaptionDb);
        Assert.InRange(errorsDb[^1], 0, WorstDb);
    }
}
