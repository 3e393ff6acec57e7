namespace LinkMargin.Engine.Houses;

/// <summary>One layer of a floor build-up.</summary>
/// <param name="Material">What it is, or what fills the bay between joists; null for air.</param>
/// <param name="ThicknessMetres">Thickness, metres, above 0.</param>
/// <param name="Joists">The members in a joist bay; null elsewhere.</param>
public sealed record FloorLayer(Material? Material, double ThicknessMetres, Ribs? Joists)
{
    /// <summary>Half-range of the thickness between examples, metres.</summary>
    public double ToleranceMetres { get; init; }
}
