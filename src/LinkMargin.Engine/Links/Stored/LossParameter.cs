namespace LinkMargin.Engine.Links.Stored;

/// <summary>Something that a loss may be more or less than its table says by: a material everywhere, or in one place.</summary>
/// <param name="Material">The material, by its place in <see cref="StoredPaths.Materials"/>.</param>
/// <param name="Place">Which wall's plane or which floor, by a number that means nothing else; null for everywhere.</param>
public readonly record struct LossParameter(int Material, int? Place);
