namespace LinkMargin.Engine.Diffuse;

/// <summary>A solid thing that stands in a cell: it takes what strikes it and nothing comes out on the other side into another cell.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="SquareMetres">Its surface.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Depths">How many times the depth that its material's loss belongs to a flight through it runs, on average.</param>
/// <param name="IsMirror">Whether what it throws back first is a path of its own.</param>
internal sealed record Solid(int Cell, double SquareMetres, int Material, double Depths, bool IsMirror);
