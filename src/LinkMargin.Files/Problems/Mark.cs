namespace LinkMargin.Files.Problems;

/// <summary>A place in a text file; both count from 1.</summary>
/// <param name="Line">Line.</param>
/// <param name="Column">Column, in characters.</param>
public readonly record struct Mark(int Line, int Column);
