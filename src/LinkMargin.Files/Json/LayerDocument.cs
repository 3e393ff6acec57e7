using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Json;

/// <summary>One layer of a material or a floor build-up, as JSON.</summary>
/// <param name="Of">What it is; <c>air</c> for a cavity.</param>
/// <param name="ThicknessM">Thickness, metres.</param>
/// <param name="ToleranceM">Half-range of the thickness between examples, metres.</param>
/// <param name="LossDb">Loss of a floor's layer, dB; left out where only the whole construction has one.</param>
/// <param name="Joists">The members in a joist bay; left out elsewhere.</param>
public sealed record LayerDocument(string Of, double ThicknessM, double ToleranceM, double? LossDb, RibsDocument? Joists)
{
    private const string Air = "air";

    internal static LayerDocument From(Layer layer) =>
        new(layer.SubstanceName, layer.ThicknessMetres, layer.ToleranceMetres, null, null);

    internal static LayerDocument From(FloorLayer layer) => new(
        layer.Material?.Name ?? Air,
        layer.ThicknessMetres,
        layer.ToleranceMetres,
        layer.Material?.LossDb,
        RibsDocument.From(layer.Joists));
}
