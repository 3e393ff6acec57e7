namespace LinkMargin.Files.Plans;

/// <summary>Two edges of different rooms that are the two faces of one wall.</summary>
/// <param name="A">Position of one edge among the level's edges.</param>
/// <param name="B">Position of the other.</param>
/// <param name="GapMetres">Mean distance between them; below zero where the rooms overlap a little.</param>
internal readonly record struct FacingPair(int A, int B, double GapMetres);
