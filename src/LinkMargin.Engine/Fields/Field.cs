using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Fields;

/// <summary>The margin over one level for one spot.</summary>
/// <param name="Spot">Where the console stands.</param>
/// <param name="LevelIndex">The level the hands are on; 0 is the lowest.</param>
/// <param name="HandsMetres">Height of the hands above that level's floor, metres.</param>
/// <param name="Grid">The cells.</param>
/// <param name="MarginDb">Margin at each cell's centre, dB, in the grid's order; NaN = not computed (outside every room).</param>
public sealed record Field(Spot Spot, int LevelIndex, double HandsMetres, Grid Grid, IReadOnlyList<double> MarginDb);
