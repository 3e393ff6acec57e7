namespace LinkMargin.Engine.Readings;

/// <summary>Everything an estimate rests on.</summary>
public sealed record FitProblem
{
    /// <summary>Makes one.</summary>
    /// <param name="model">Path losses of the links.</param>
    /// <param name="materials">What its parameters are, in its order.</param>
    /// <param name="devices">Pairs of devices, by the numbers the readings give them.</param>
    /// <param name="readings">The readings.</param>
    /// <param name="bad">How many readings are wrong, and by how much.</param>
    public FitProblem(
        IPathLossModel model,
        IReadOnlyList<MaterialPrior> materials,
        IReadOnlyList<DevicePrior> devices,
        IReadOnlyList<FitReading> readings,
        BadReadings bad)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(materials);
        ArgumentNullException.ThrowIfNull(devices);
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(bad);
        Require(materials.Count == model.ParameterCount, nameof(materials), "There must be one material for each parameter of the model.");
        Require(materials.All(m => m.SpreadDb >= 0 && m.LossDb >= 0), nameof(materials), "Losses and spreads are 0 dB or more.");
        Require(devices.All(d => d.SpreadDb > 0 && double.IsFinite(d.OffsetDbm)), nameof(devices), "A device's spread is above 0 dB.");
        Require(readings.All(r => r.Device >= 0 && r.Device < devices.Count), nameof(readings), "A reading names a device that is not there.");
        Require(
            readings.All(r => r.NoiseDb > 0 && double.IsFinite(r.LevelDbm)),
            nameof(readings),
            "A reading has a finite level and a noise above 0 dB.");
        Require(bad.Share == 0 || (bad.Share > 0 && bad.Share < 1 && bad.SpreadDb > 0), nameof(bad), "A share is 0 to below 1, and what is bad has a spread above 0 dB.");
        (Model, Materials, Devices, Readings, Bad) = (model, materials, devices, readings, bad);
    }

    /// <summary>Path losses of the links.</summary>
    public IPathLossModel Model { get; }

    /// <summary>What the model's parameters are, in its order.</summary>
    public IReadOnlyList<MaterialPrior> Materials { get; }

    /// <summary>Pairs of devices, by the numbers the readings give them.</summary>
    public IReadOnlyList<DevicePrior> Devices { get; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<FitReading> Readings { get; }

    /// <summary>How many readings are wrong, and by how much.</summary>
    public BadReadings Bad { get; }

    /// <summary>The same with other readings.</summary>
    public FitProblem With(IReadOnlyList<FitReading> readings) => new(Model, Materials, Devices, readings, Bad);

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
