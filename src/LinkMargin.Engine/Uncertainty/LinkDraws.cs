using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>Evaluates stored links in every draw of the house and of its radios.</summary>
internal sealed class LinkDraws
{
    private readonly HouseDraws house;
    private readonly RadioPair radios;
    private readonly UncertaintyBasis basis;
    private readonly double[] radiosDb;

    /// <summary>Draws a house and its two radios.</summary>
    internal LinkDraws(StoredPaths stored, RadioPair radios, UncertaintyBasis basis)
        : this(new HouseDraws(stored.Parameters, stored.Materials, PlaceSpreads.Of(stored, basis), basis), radios, basis, "console")
    {
    }

    private LinkDraws(HouseDraws house, RadioPair radios, UncertaintyBasis basis, string consoleName)
    {
        (this.house, this.radios, this.basis) = (house, radios, basis);
        var draws = new LatinHypercubeSampler(basis.Draws, basis.Seed);
        (double Spread, double[] Drawn) console = (radios.Console.SpreadDb, draws.Of(consoleName)), controller = (radios.Controller.SpreadDb, draws.Of("controller"));
        radiosDb = [.. Enumerable.Range(0, basis.Draws).Select(d => (console.Spread * console.Drawn[d]) + (controller.Spread * controller.Drawn[d]))];
    }

    /// <summary>The same draws of the house with another console, whose radio is drawn by itself.</summary>
    internal LinkDraws With(RadioPair other) => other == radios ? this : new LinkDraws(house, other, basis, $"console {other.Console.Name}");

    /// <summary>One link's margins. A radio's shift is the same in both directions, so the worse direction stays the worse.</summary>
    /// <param name="link">The link.</param>
    /// <param name="read">What measurements say about it alone; null where it was not measured.</param>
    internal DrawnMargins Of(StoredLink link, FittedLink? read = null)
    {
        double[] marginDb = new double[radiosDb.Length];
        link.PathLossesDb(house.ShiftsDb, marginDb);
        for (int d = 0; d < marginDb.Length; d++)
        {
            marginDb[d] = radios.GreatestLossDb - marginDb[d] + radiosDb[d] - (read?.ShiftDb ?? 0);
        }

        return new DrawnMargins(marginDb, read?.SpreadDb ?? basis.Spreads.ModelDb);
    }
}

/// <summary>
/// Draws of a house's losses: one shift for each row of the material table, and one for each place. No loss goes below 0. All
/// links use the same draws, so that spots are compared in the same houses.
/// </summary>
internal sealed class HouseDraws
{
    private readonly double[] shiftsDb; // parameter by parameter

    internal HouseDraws(
        IReadOnlyList<LossParameter> parameters, IReadOnlyList<Material> materials, IReadOnlyList<double> ownSpreadsDb, UncertaintyBasis basis)
    {
        var draws = new LatinHypercubeSampler(basis.Draws, basis.Seed);
        var shared = new SharedLosses(materials, basis);
        double[][] rows = shared.Drawn(draws);
        shiftsDb = new double[basis.Draws * parameters.Count];
        for (int p = 0; p < parameters.Count; p++)
        {
            Material material = materials[parameters[p].Material];
            int row = shared.RowOf(parameters[p].Material);
            double inCommon = shared.SpreadsDb[row] * material.Scale, own = ownSpreadsDb[parameters[p].Material];
            double[]? here = parameters[p].Place is int place && own > 0 ? draws.Of(FormattableString.Invariant($"{material.Name} at {place}")) : null;
            for (int d = 0; d < basis.Draws; d++)
            {
                double everywhere = Math.Max(-material.LossDb, inCommon * rows[row][d]);
                shiftsDb[(p * basis.Draws) + d] = parameters[p].Place is null ? everywhere
                    : here is null ? 0
                    : Math.Max(-material.LossDb - everywhere, own * here[d]);
            }
        }
    }

    /// <summary>How much more each parameter loses than its table says, dB: all draws of the first, then of the next.</summary>
    internal ReadOnlySpan<double> ShiftsDb => shiftsDb;
}
