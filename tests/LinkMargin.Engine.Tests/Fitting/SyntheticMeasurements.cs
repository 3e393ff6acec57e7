using LinkMargin.Engine.Fitting;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Tests.Fitting;

/// <summary>A made-up house whose losses and offsets are drawn from what the tables allow, and readings taken in it.</summary>
internal sealed class SyntheticMeasurements
{
    public const double NoiseDb = 5;

    private static readonly (string Name, double LossDb, double SpreadDb)[] Table =
        [("stud wall", 3.4, 1.5), ("brick wall", 7.5, 2.5), ("timber floor", 5, 2), ("coated pane", 24, 6), ("door", 2.5, 1)];

    public SyntheticMeasurements(int seed, int linkCount, BadMeasurements bad, double? hearsFromDbm = null)
    {
        Random random = new(seed);
        House = new SyntheticHouse(random, [.. Table.Select(t => t.LossDb)], linkCount);
        MaterialPrior[] materials = [.. Table.Select(t => new MaterialPrior(t.Name, t.LossDb, t.SpreadDb))];
        DevicePrior[] devices = [new DevicePrior("phone", 10, 12), new DevicePrior("laptop", 10, 12)];
        TrueShiftsDb = [.. materials.Select(m => Math.Max(-m.LossDb, Normal.Sample(random, 0, m.SpreadDb)))];
        TrueOffsetsDbm = [.. devices.Select(d => Normal.Sample(random, d.OffsetDbm, d.SpreadDb))];
        double[] gradient = new double[materials.Length];
        FitMeasurement[] measurements = new FitMeasurement[linkCount];
        for (int i = 0; i < linkCount; i++)
        {
            int device = i % devices.Length;
            double level = TrueOffsetsDbm[device] - House.PathLossDb(i, TrueShiftsDb, gradient) + Normal.Sample(random, 0, NoiseDb);
            double? bound = hearsFromDbm is { } weakest ? weakest + TrueOffsetsDbm[device] : null;
            measurements[i] = level < bound
                ? new FitMeasurement(i, device, bound.Value, false, NoiseDb)
                : new FitMeasurement(i, device, level, true, NoiseDb);
        }

        Problem = new FitProblem(House, materials, devices, measurements, bad);
    }

    public SyntheticHouse House { get; }

    public FitProblem Problem { get; }

    public double[] TrueShiftsDb { get; }

    public double[] TrueOffsetsDbm { get; }

    /// <summary>The level a link truly has on average, dBm.</summary>
    public double TrueLevelDbm(int link, int device) =>
        TrueOffsetsDbm[device] - House.PathLossDb(link, TrueShiftsDb, new double[TrueShiftsDb.Length]);
}
