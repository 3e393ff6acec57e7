using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>Works stored links out in every draw of the house and of its radios.</summary>
internal sealed class LinkDraws
{
    private readonly HouseDraws house;
    private readonly double[] radiosDb;
    private readonly double greatestLossDb;
    private readonly double modelDb;

    internal LinkDraws(StoredPaths stored, RadioPair radios, UncertaintyBasis basis)
    {
        house = new HouseDraws(stored.Parameters, stored.Materials, PlaceSpreads.Of(stored, basis), basis);
        var draws = new LatinHypercubeSampler(basis.Draws, basis.Seed);
        (double Spread, double[] Drawn) console = (radios.Console.SpreadDb, draws.Of("console")), controller = (radios.Controller.SpreadDb, draws.Of("controller"));
        radiosDb = [.. Enumerable.Range(0, basis.Draws).Select(d => (console.Spread * console.Drawn[d]) + (controller.Spread * controller.Drawn[d]))];
        (greatestLossDb, modelDb) = (radios.GreatestLossDb, basis.Spreads.ModelDb);
    }

    /// <summary>One link's margins. A radio's shift is in both directions alike, so the worse one stays the worse.</summary>
    /// <param name="link">The link.</param>
    /// <param name="read">What measurements say of it alone; null where it was not read.</param>
    internal DrawnMargins Of(StoredLink link, FittedLink? read = null)
    {
        double[] marginDb = new double[radiosDb.Length];
        for (int d = 0; d < marginDb.Length; d++)
        {
            marginDb[d] = greatestLossDb - link.PathLossDb(house.ShiftsDb(d)) + radiosDb[d] - (read?.ShiftDb ?? 0);
        }

        return new DrawnMargins(marginDb, read?.SpreadDb ?? modelDb);
    }
}
