using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Reports.Houses;

/// <summary>What to try to improve a spot.</summary>
internal static class ImproveRequests
{
    // Possible panels for a side of a rack or cabinet: rows of the material table; one that a table lacks is skipped.
    private static readonly string[] Panels = ["mesh-coarse", "mesh", "perforated-steel", "glass-single", "cabinet-wood"];

    private const string ControllerPrefix = "controller-";

    /// <summary>The request for a spot, with panels and controllers from some tables.</summary>
    public static ImproveRequest For(Spot spot, MaterialTables tables) => new(
        spot,
        [.. Panels.Where(tables.Materials.ContainsKey).Select(panel => tables.Materials[panel])],
        [.. tables.Radios.Values.Where(radio => radio.Name.StartsWith(ControllerPrefix, StringComparison.Ordinal))]) { Leads = tables.Cables };
}
