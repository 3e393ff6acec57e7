namespace LinkMargin.Engine.Houses;

/// <summary>Parallel members inside a cavity: studs in a wall, joists in a floor.</summary>
/// <param name="Material">What a member is made of; its table loss is that of a member's whole depth.</param>
/// <param name="WidthMetres">Width of a member across its run, metres.</param>
/// <param name="DepthMetres">Depth of a member through the wall or floor, metres.</param>
/// <param name="SpacingMetres">Distance between centres, metres, more than the width.</param>
public sealed record Ribs(Material Material, double WidthMetres, double DepthMetres, double SpacingMetres);
