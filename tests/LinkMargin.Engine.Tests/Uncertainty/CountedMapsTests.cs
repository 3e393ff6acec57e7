using CsCheck;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Tests.Uncertainty;

public sealed class CountedMapsTests
{
    private const double RequiredDb = 15;

    private static readonly Spreads Some = new(4, 0.2, 3, 0.05, 20, 10, 12); // made up

    /// <summary>The judge is the field with every cell traced.</summary>
    [Fact, Law]
    public void The_share_that_passes_the_minimum_and_the_maximum_of_a_map_are_those_of_its_exact_cells()
    {
        int cells = 0, wrong = 0;
        RoomedHouse.Any.Where(house => house.Spots.Count > 0).ForAll(
            house =>
            {
                var model = new LinkModel(house);
                var maps = new CountedMaps(model, new UncertaintyBasis(Some), 0.9, RequiredDb);
                var request = new FieldRequest(house.Spots[0], 0) { CellMetres = 0.2, Stage = FieldStage.Map };
                (Field median, Field counted) = maps.Compute(request);
                Field exact = FieldComputation.Compute(model, request with { Stage = FieldStage.Exact });
                for (int cell = 0; cell < median.MarginDb.Count; cell++)
                {
                    cells++;
                    wrong += median.MarginDb[cell] >= RequiredDb != exact.MarginDb[cell] >= RequiredDb ? 1 : 0;
                    if (Math.Min(Math.Abs(median.MarginDb[cell] - RequiredDb), Math.Abs(counted.MarginDb[cell] - RequiredDb)) < 0.01)
                    {
                        Assert.Equal(exact.MarginDb[cell], median.MarginDb[cell]);
                    }
                }

                FieldSummary map = FieldSummary.Of(median, RequiredDb)!, all = FieldSummary.Of(exact, RequiredDb)!;
                Assert.Equal((all.LeastDb, all.GreatestDb), (map.LeastDb, map.GreatestDb));
            },
            cases: 6);
        Assert.InRange(wrong, 0, cells / 1000);
    }
}
