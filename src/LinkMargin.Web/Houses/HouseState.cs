using LinkMargin.Engine.Houses;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Web.Houses;

/// <summary>The house at one moment: as its file has it, and with what is tried. It never changes; the next moment has another.</summary>
/// <param name="Version">Counts moments.</param>
/// <param name="Disk">The file.</param>
/// <param name="InFile">The house as the file has it; the last one that could be read, where the file has errors now.</param>
/// <param name="Now">The house with what is tried.</param>
/// <param name="Steps">What was tried, in order; undone steps are not among them.</param>
/// <param name="Undone">How many undone steps can be made again.</param>
internal sealed record HouseState(int Version, HouseOnDisk Disk, LoadedHouse InFile, LoadedHouse Now, IReadOnlyList<Step> Steps, int Undone)
{
    /// <summary>Names of the seats with people on them.</summary>
    public IReadOnlyList<string> People { get; init; } = [];

    /// <summary>The seats with people on them who obstruct links.</summary>
    public IReadOnlyList<Seat> Occupied => [.. Now.House.Seats.Where(seat => People.Contains(seat.Name) && seat.FacingDegrees is not null)];
}
