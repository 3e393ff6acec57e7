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
    private readonly LatinHypercubeSampler sampler;
    private readonly double[] radiosDb;

    /// <summary>Draws a house and its two radios.</summary>
    /// <param name="stored">The links.</param>
    /// <param name="radios">The radios.</param>
    /// <param name="basis">How uncertain the figures are.</param>
    /// <param name="sampler">What the same basis has drawn before; null for nothing.</param>
    internal LinkDraws(StoredPaths stored, RadioPair radios, UncertaintyBasis basis, LatinHypercubeSampler? sampler = null)
        : this(
            new HouseDraws(stored.Parameters, stored.Materials, PlaceSpreads.Of(stored, basis), basis, sampler ??= new LatinHypercubeSampler(basis)),
            radios,
            basis,
            sampler,
            "console")
    {
    }

    private LinkDraws(HouseDraws house, RadioPair radios, UncertaintyBasis basis, LatinHypercubeSampler sampler, string consoleName)
    {
        (this.house, this.radios, this.basis, this.sampler) = (house, radios, basis, sampler);
        double[] console = sampler.Of(consoleName), controller = sampler.Of("controller");
        radiosDb = [.. console.Zip(controller, (one, other) => (radios.Console.SpreadDb * one) + (radios.Controller.SpreadDb * other))];
    }

    /// <summary>The same draws of the house with another console, whose radio is drawn by itself.</summary>
    internal LinkDraws With(RadioPair other) => other == radios ? this : new LinkDraws(house, other, basis, sampler, $"console {other.Console.Name}");

    /// <summary>One link's path loss in each draw, dB.</summary>
    internal double[] LossesDb(StoredLink link)
    {
        double[] lossesDb = new double[radiosDb.Length];
        link.PathLossesDb(house.ShiftsDb, lossesDb);
        return lossesDb;
    }

    /// <summary>One link's margins.</summary>
    /// <param name="link">The link.</param>
    /// <param name="read">What measurements say about it alone; null where it was not measured.</param>
    internal DrawnMargins Of(StoredLink link, FittedLink? read = null) => Of(LossesDb(link), read);

    /// <summary>The margins at some path losses. A radio's shift is the same in both directions, so the worse direction stays the worse.</summary>
    /// <param name="lossesDb">The path loss in each draw, dB.</param>
    /// <param name="read">What measurements say about the link alone; null where it was not measured.</param>
    internal DrawnMargins Of(double[] lossesDb, FittedLink? read)
    {
        double[] marginDb = new double[lossesDb.Length];
        for (int d = 0; d < marginDb.Length; d++)
        {
            marginDb[d] = radios.GreatestLossDb - lossesDb[d] + radiosDb[d] - (read?.ShiftDb ?? 0);
        }

        return new DrawnMargins(marginDb, read?.SpreadDb ?? basis.Spreads.ModelDb);
    }
}

/// <summary>
/// Draws of a house's losses: one shift for each row of the material table, and one for each place. No loss goes below 0. All
/// links use the same draws, so that spots are compared in the same houses. What no link asks for is not drawn.
/// </summary>
internal sealed class HouseDraws
{
    private readonly IReadOnlyList<LossParameter> parameters;
    private readonly IReadOnlyList<Material> materials;
    private readonly IReadOnlyList<double> ownSpreadsDb;
    private readonly LatinHypercubeSampler draws;
    private readonly SharedLosses shared;
    private readonly double[]?[] rows;
    private readonly double[]?[] shiftsDb;

    internal HouseDraws(
        IReadOnlyList<LossParameter> parameters,
        IReadOnlyList<Material> materials,
        IReadOnlyList<double> ownSpreadsDb,
        UncertaintyBasis basis,
        LatinHypercubeSampler draws)
    {
        (this.parameters, this.materials, this.ownSpreadsDb, this.draws) = (parameters, materials, ownSpreadsDb, draws);
        shared = new SharedLosses(materials, basis);
        rows = new double[shared.Names.Count][];
        shiftsDb = new double[parameters.Count][];
    }

    /// <summary>How much more a parameter loses than its table says in each draw, dB.</summary>
    internal double[] ShiftsDb(int parameter) => LazyInitializer.EnsureInitialized(ref shiftsDb[parameter], () => Drawn(parameters[parameter]));

    private double[] Row(int row) => LazyInitializer.EnsureInitialized(ref rows[row], () => shared.Drawn(draws, row));

    private double[] Drawn(LossParameter parameter)
    {
        Material material = materials[parameter.Material];
        int row = shared.RowOf(parameter.Material);
        double inCommon = shared.SpreadsDb[row] * material.Scale, own = ownSpreadsDb[parameter.Material];
        double[] here = parameter.Place is int place && own > 0 ? draws.Of(FormattableString.Invariant($"{material.Name} at {place}")) : [], everywhere = Row(row);
        double[] shifts = new double[everywhere.Length];
        for (int d = 0; d < shifts.Length; d++)
        {
            double all = Math.Max(-material.LossDb, inCommon * everywhere[d]);
            shifts[d] = parameter.Place is null ? all
                : here.Length == 0 ? 0
                : Math.Max(-material.LossDb - all, own * here[d]);
        }

        return shifts;
    }
}
