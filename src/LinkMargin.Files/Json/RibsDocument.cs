using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>Studs or joists, as JSON.</summary>
/// <param name="Of">What a member is made of.</param>
/// <param name="WidthM">Width across its run, metres.</param>
/// <param name="DepthM">Depth through the wall or floor, metres.</param>
/// <param name="SpacingM">Distance between centres, metres.</param>
/// <param name="LossDb">Loss of one member's whole depth, dB.</param>
public sealed record RibsDocument(string Of, double WidthM, double DepthM, double SpacingM, double LossDb)
{
    internal static RibsDocument? From(Ribs? ribs) => ribs is null
        ? null
        : new(ribs.Material.Name, ribs.WidthMetres, ribs.DepthMetres, ribs.SpacingMetres, ribs.Material.LossDb);
}
