using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Fitting;

/// <summary>What the tables say of a house before anything was read.</summary>
public static class HousePriors
{
    /// <summary>One prior for each row of the material table that the house is made of; all depths of a row share one.</summary>
    /// <param name="house">The house.</param>
    /// <param name="spreads">How much of a spread all of a material in a house has in common.</param>
    public static IReadOnlyList<MaterialPrior> Of(House house, Spreads spreads)
    {
        ArgumentNullException.ThrowIfNull(spreads);
        return
        [
            .. HouseFabric.Of(house)
                .DistinctBy(material => material.TableRow)
                .Select(material => new MaterialPrior(
                    material.TableRow, material.LossDb / material.Scale, spreads.InCommonDb(material.SpreadDb / material.Scale))),
        ];
    }
}
