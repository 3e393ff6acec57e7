using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Web.Houses;

namespace LinkMargin.Web.Answers;

/// <summary>All links of the house as in its file, computed once per state of the file: the reference for everything tried.</summary>
/// <param name="models">Models of houses.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class FileFigures(Models models, double confidence)
{
    private readonly Lock gate = new();
    private (HouseOnDisk Disk, HouseUncertainty Uncertainty)? last;

    /// <summary>Whether a state is the house of the file with nobody on the seats.</summary>
    public static bool IsAsInFile(HouseState state) => ReferenceEquals(state.Now.House, state.InFile.House) && state.Occupied.Count == 0;

    /// <summary>The uncertainty of all its links.</summary>
    public HouseUncertainty Of(HouseState state)
    {
        lock (gate)
        {
            if (last is not { } known || !ReferenceEquals(known.Disk, state.Disk))
            {
                House house = state.InFile.House;
                last = known = (state.Disk, HouseUncertainty.Of(models.For(house, []), house.Spots, house.Seats, state.InFile.Uncertainty, confidence));
            }

            return known.Uncertainty;
        }
    }

    /// <summary>The margin to count on of a link, dB; null if the file has no such spot or seat.</summary>
    public double? CountOnDb(HouseState state, string spot, string seat)
    {
        House house = state.InFile.House;
        return house.Spots.FirstOrDefault(one => one.Name == spot) is { } from && house.Seats.FirstOrDefault(one => one.Name == seat) is { } to
            ? Of(state).Between(from, to).MarginAtConfidenceDb
            : null;
    }
}
