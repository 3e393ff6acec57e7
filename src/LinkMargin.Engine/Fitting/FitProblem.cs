using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Fitting;

/// <summary>Everything an estimate is based on.</summary>
public sealed record FitProblem
{
    /// <summary>Makes one.</summary>
    /// <param name="model">Path losses of the links.</param>
    /// <param name="materials">The model's parameters, in its order.</param>
    /// <param name="devices">Pairs of devices, by the numbers the measurements give them.</param>
    /// <param name="measurements">The measurements.</param>
    /// <param name="bad">How many measurements are wrong, and by how much.</param>
    public FitProblem(
        IPathLossModel model,
        IReadOnlyList<MaterialPrior> materials,
        IReadOnlyList<DevicePrior> devices,
        IReadOnlyList<FitMeasurement> measurements,
        BadMeasurements bad)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(materials);
        ArgumentNullException.ThrowIfNull(devices);
        ArgumentNullException.ThrowIfNull(measurements);
        ArgumentNullException.ThrowIfNull(bad);
        Require(materials.Count == model.ParameterCount, nameof(materials), "There must be one material for each parameter of the model.");
        Require(materials.All(m => m.SpreadDb >= 0 && m.LossDb >= 0), nameof(materials), "Losses and spreads are 0 dB or more.");
        Require(devices.All(d => d.SpreadDb > 0 && double.IsFinite(d.OffsetDbm)), nameof(devices), "A device's spread is above 0 dB.");
        Require(measurements.All(r => r.Device >= 0 && r.Device < devices.Count), nameof(measurements), "A measurement names a device that does not exist.");
        Require(
            measurements.All(r => r.NoiseDb > 0 && double.IsFinite(r.LevelDbm)),
            nameof(measurements),
            "A measurement has a finite level and a noise above 0 dB.");
        Require(bad.Share == 0 || (bad.Share > 0 && bad.Share < 1 && bad.SpreadDb > 0), nameof(bad), "A share is 0 to below 1, and what is bad has a spread above 0 dB.");
        (Model, Materials, Devices, Measurements, Bad) = (model, materials, devices, measurements, bad);
    }

    /// <summary>Path losses of the links.</summary>
    public IPathLossModel Model { get; }

    /// <summary>The model's parameters, in its order.</summary>
    public IReadOnlyList<MaterialPrior> Materials { get; }

    /// <summary>Pairs of devices, by the numbers the measurements give them.</summary>
    public IReadOnlyList<DevicePrior> Devices { get; }

    /// <summary>The measurements.</summary>
    public IReadOnlyList<FitMeasurement> Measurements { get; }

    /// <summary>How many measurements are wrong, and by how much.</summary>
    public BadMeasurements Bad { get; }

    /// <summary>The same with other measurements.</summary>
    public FitProblem With(IReadOnlyList<FitMeasurement> measurements) => new(Model, Materials, Devices, measurements, Bad);

    /// <summary>The name of an unknown: materials first, then devices.</summary>
    internal string NameOf(int unknown) =>
        unknown < Materials.Count ? Materials[unknown].Name : Devices[unknown - Materials.Count].Name;

    private static void Require(bool holds, string name, string message)
    {
        if (!holds)
        {
            throw new ArgumentException(message, name);
        }
    }
}

/// <summary>What is known about a pair of devices before any measurement.</summary>
/// <param name="Name">What the pair is called.</param>
/// <param name="OffsetDbm">The level it would show with no loss between them, dBm.</param>
/// <param name="SpreadDb">One standard deviation of that, dB, above 0.</param>
public sealed record DevicePrior(string Name, double OffsetDbm, double SpreadDb);

/// <summary>What is known about a material before any measurement.</summary>
/// <param name="Name">Its row in the material table.</param>
/// <param name="LossDb">Its table loss, dB: a shift never lowers it below 0.</param>
/// <param name="SpreadDb">One standard deviation of the shift, dB; 0 for a material that is not fitted.</param>
public sealed record MaterialPrior(string Name, double LossDb, double SpreadDb);

/// <summary>One measurement as the estimator sees it.</summary>
/// <param name="Link">Which link of the model it was taken on.</param>
/// <param name="Device">Which pair of devices it was taken with.</param>
/// <param name="LevelDbm">The level received, dBm; where nothing was heard, the level below which nothing can be heard.</param>
/// <param name="IsHeard">Whether there was a level; if not, all that is known is that it lay below.</param>
/// <param name="NoiseDb">
/// One standard deviation of its difference from the model: remaining fading, what the model leaves out, what differs from
/// crossing to crossing; dB, above 0.
/// </param>
public readonly record struct FitMeasurement(int Link, int Device, double LevelDbm, bool IsHeard, double NoiseDb);

/// <summary>What the tables say about a house before any measurement.</summary>
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
