using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Tables;
using Xunit.Abstractions;

namespace LinkMargin.Files.Tests.Measured;

/// <summary>
/// The main job against links that somebody else measured (source: <c>reference/open-hall-ble.csv</c>): every link of the hall
/// with the shipped tables, one offset fitted for each receiver and nothing else.
/// <para>
/// The data are means of decibels; the model gives the decibels of a mean power. For one link whose level varies with a standard
/// deviation of s dB, the second lies about s²·ln 10 / 20 above the first (exact where levels are normal in dB): 0.2 dB where
/// the level stands still, up to 17 dB where the three advertising channels differ most. What all links of a receiver have in common
/// is in its offset; the rest is an error of the comparison, not of the house. So both are reported: levels as published, and the
/// mean powers they stand for, which are what the model computes.
/// </para>
/// </summary>
public sealed class OpenHallTests(ITestOutputHelper output)
{
    /// <summary>How much worse than the better baseline the house may be, dB.</summary>
    private const double AllowedDb = 0.1;

    // Of a variable that is normal in dB: its mean power lies this many times s² above its mean.
    private static readonly double MeanPowerOverMeanDb = Math.Log(10) / 20;

    private static readonly Lazy<Dictionary<(string Sensor, string Seat), double>> LossesDb = new(Compute);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void The_hall_as_described_is_as_close_to_mean_powers_as_the_better_baseline(int set) =>
        Assert.InRange(Compare(set, "mean powers", MeanPowerOverMeanDb).AboveBetterBaselineDb, -5, AllowedDb);

    /// <summary>
    /// The baselines are those that come with the data: rms after one offset for each receiver, computed from it by others, to the
    /// digits given.
    /// </summary>
    [Theory]
    [InlineData(1, 4.13, 3.97)]
    [InlineData(2, 4.15, 3.98)]
    public void The_hall_as_described_is_as_close_to_the_published_levels_as_the_better_baseline(int set, double givenFreeSpaceDb, double givenDistanceDb)
    {
        Residuals residuals = Compare(set, "levels as published", 0);
        Assert.Equal(givenFreeSpaceDb, residuals.FreeSpaceDb, 0.005);
        Assert.Equal(givenDistanceDb, residuals.DistanceDb, 0.005);
        Assert.InRange(residuals.AboveBetterBaselineDb, -5, AllowedDb);
    }

    private Residuals Compare(int set, string what, double shiftPerVariance)
    {
        HallMeasurement[] all = [.. OpenHall.Measurements.Where(m => m.Set == set)];
        double[] levels = [.. all.Select(m => m.MeanDbm + (shiftPerVariance * m.SpreadDb * m.SpreadDb))];
        double[] decades = [.. all.Select(m => Math.Log10(m.Receiver.DistanceTo(m.Beacon)))];

        // Least squares of level = offset of the receiver − 10·n·lg d.
        double[] x = Centred(all, decades), y = Centred(all, levels);
        double exponent = -x.Zip(y, (a, b) => a * b).Sum() / x.Sum(a => a * a) / 10;
        Residuals found = new(
            RmsDb(all, [.. all.Select((m, i) => levels[i] + LossesDb.Value[(m.Sensor, OpenHall.SeatName(m.Beacon))])]),
            RmsDb(all, [.. levels.Zip(decades, (level, decade) => level + (20 * decade))]),
            RmsDb(all, [.. levels.Zip(decades, (level, decade) => level + (10 * exponent * decade))]));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"date {set}, {all.Length} links, {what}, rms after one offset for each receiver: house {found.HouseDb:0.000} dB, free space {found.FreeSpaceDb:0.000} dB, distance power law with exponent {exponent:0.00} {found.DistanceDb:0.000} dB"));
        return found;
    }

    /// <summary>Root mean square of what is left when each receiver's mean is taken off, dB.</summary>
    private static double RmsDb(HallMeasurement[] all, double[] values) => Math.Sqrt(Centred(all, values).Average(value => value * value));

    private static double[] Centred(HallMeasurement[] all, double[] values)
    {
        Dictionary<string, double> mean = all.Zip(values).GroupBy(pair => pair.First.Sensor).ToDictionary(group => group.Key, group => group.Average(pair => pair.Second));
        return [.. values.Select((value, i) => value - mean[all[i].Sensor])];
    }

    private static Dictionary<(string Sensor, string Seat), double> Compute()
    {
        House house = OpenHall.Read(MaterialTablesFile.ReadBuiltIn().Tables!);
        var model = new LinkModel(house);
        return house.Spots
            .SelectMany(spot => LinkEvaluation.Budgets(model, spot, house.Seats))
            .ToDictionary(
                budget => (budget.Spot.Name, budget.Seat.Name),
                budget => -Decibels.FromPowerRatio(budget.Paths.Sum(path => Decibels.ToPowerRatio(path.BodyDb - path.LossDb))));
    }

    private sealed record Residuals(double HouseDb, double FreeSpaceDb, double DistanceDb)
    {
        public double AboveBetterBaselineDb => HouseDb - Math.Min(FreeSpaceDb, DistanceDb);
    }
}
