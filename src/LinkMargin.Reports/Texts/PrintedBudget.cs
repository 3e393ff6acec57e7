using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>
/// A budget's values in tenths of a decibel, rounded together so that the printed values add up and the margin is the same as in
/// every other table.
/// </summary>
internal sealed class PrintedBudget
{
    private readonly bool hasOnePath;

    /// <summary>Rounds a budget.</summary>
    public PrintedBudget(LinkBudget budget)
    {
        hasOnePath = budget.Paths.Count == 1;
        DirectionBudget worse = budget.WorseDirection;

        // The direction that decides fixes the printed path loss; the other direction uses the same value.
        long[] deciding = Tenths.Apportion([.. RadioItems(worse), -budget.PathLossDb], Tenths.OfMargin(worse.MarginDb));
        PathLoss = -deciding[^1];
        Worse = new PrintedDirection(deciding);
        Directions = [.. budget.Directions.Select(d => d == worse ? Worse : Other(d))];
    }

    /// <summary>Total loss of all paths.</summary>
    public long PathLoss { get; }

    /// <summary>The direction that decides.</summary>
    public PrintedDirection Worse { get; }

    /// <summary>The directions, in the budget's order.</summary>
    public IReadOnlyList<PrintedDirection> Directions { get; }

    /// <summary>Loss of one path; if it is the only one, the total loss.</summary>
    public long LossOf(PathBudget path) => hasOnePath ? PathLoss : Tenths.Of(path.LossDb);

    /// <summary>One path's parts, which add up to <see cref="LossOf"/>.</summary>
    public long[] PartsOf(PathBudget path, IReadOnlyList<PathPart> parts) =>
        Tenths.Apportion([.. parts.Select(part => part.LossDb)], LossOf(path));

    private static double[] RadioItems(DirectionBudget d) => [d.TransmitDbm, d.AntennaGainsDb, -d.HandAndBodyDb, -d.PolarisationDb, -d.SensitivityDbm];

    private PrintedDirection Other(DirectionBudget direction)
    {
        double[] items = RadioItems(direction);
        return new PrintedDirection([.. Tenths.Apportion(items, Tenths.Of(items.Sum())), -PathLoss]);
    }
}

/// <summary>One direction's values in tenths of a decibel; losses are negative.</summary>
/// <param name="items">Transmit power, antenna gains, grip, polarisation mismatch, sensitivity with its sign changed, path loss.</param>
internal sealed class PrintedDirection(IReadOnlyList<long> items)
{
    /// <summary>Power into the sender's antenna.</summary>
    public long Transmit => items[0];

    /// <summary>Both antennas' gains.</summary>
    public long AntennaGains => items[1];

    /// <summary>The loss by the grip, negative.</summary>
    public long HandAndBody => items[2];

    /// <summary>The polarisation mismatch loss, negative.</summary>
    public long Polarisation => items[3];

    /// <summary>The path loss, negative.</summary>
    public long PathLoss => items[5];

    /// <summary>The received level.</summary>
    public long Received => Transmit + AntennaGains + HandAndBody + Polarisation + PathLoss;

    /// <summary>The level the receiver needs.</summary>
    public long Needed => -items[4];

    /// <summary>Received less needed level.</summary>
    public long Margin => Received - Needed;
}
