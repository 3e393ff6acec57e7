namespace LinkMargin.Engine.Diffuse;

/// <summary>What stands between two cells, or on both sides in one, for the books of the power balance.</summary>
/// <param name="One">The cell on one side.</param>
/// <param name="Other">The cell on the other.</param>
/// <param name="SquareMetres">Its area.</param>
/// <param name="Material">What it is made of; <see cref="Facet.Nothing"/> for a hole.</param>
/// <param name="IsMirror">Whether what it throws back first is a path of its own.</param>
internal sealed record Panel(int One, int Other, double SquareMetres, int Material, bool IsMirror);
