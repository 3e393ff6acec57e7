using LinkMargin.Engine.Fitting;

namespace LinkMargin.Files.Json;

/// <summary>A material before and after a fit, as JSON.</summary>
/// <param name="Material">Its row in the material table.</param>
/// <param name="TableLossDb">What the table says, dB.</param>
/// <param name="TableSpreadDb">How far that may be out in one house, dB.</param>
/// <param name="LossDb">The loss in this house, dB.</param>
/// <param name="SpreadDb">How far that may still be out, dB.</param>
public sealed record FitMaterialDocument(string Material, double TableLossDb, double TableSpreadDb, double LossDb, double SpreadDb)
{
    internal static FitMaterialDocument Of(FittedMaterial fitted) =>
        new(fitted.Name, fitted.TableLossDb, fitted.TableSpreadDb, fitted.LossDb, fitted.SpreadDb);
}
