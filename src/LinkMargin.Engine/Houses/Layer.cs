namespace LinkMargin.Engine.Houses;

/// <summary>One layer of a composite.</summary>
/// <param name="Substance">Electrical properties; null for an air cavity.</param>
/// <param name="SubstanceName">The table row the properties come from, or <c>air</c>.</param>
/// <param name="ThicknessMetres">Thickness, metres, above 0.</param>
/// <param name="ToleranceMetres">Half-range of the thickness between examples, metres, 0 or more; cavities vary most.</param>
public sealed record Layer(Dielectric? Substance, string SubstanceName, double ThicknessMetres, double ToleranceMetres);
