using LinkMargin.Engine.Houses;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Web.Houses;

/// <summary>One state of the house: as in its file, and with the changes tried. It is immutable; every change makes a new one.</summary>
/// <param name="Version">The number of the state.</param>
/// <param name="Disk">The file.</param>
/// <param name="InFile">The house as in the file; the last valid one if the file has errors now.</param>
/// <param name="Now">The house with all changes.</param>
/// <param name="Steps">The steps tried, in order, without undone ones.</param>
/// <param name="Undone">How many undone steps can be redone.</param>
internal sealed record HouseState(int Version, HouseOnDisk Disk, LoadedHouse InFile, LoadedHouse Now, IReadOnlyList<Step> Steps, int Undone)
{
    /// <summary>Names of the seats with people on them.</summary>
    public IReadOnlyList<string> People { get; init; } = [];

    /// <summary>The seats with people on them who obstruct links.</summary>
    public IReadOnlyList<Seat> Occupied => [.. Now.House.Seats.Where(seat => People.Contains(seat.Name) && seat.FacingDegrees is not null)];
}
