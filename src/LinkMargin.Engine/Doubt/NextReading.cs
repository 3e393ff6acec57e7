using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Doubt;

/// <summary>A reading worth taking.</summary>
/// <param name="Transmitter">The spot to send from.</param>
/// <param name="LevelIndex">The level to stand on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">How high to hold the device over the floor, metres.</param>
/// <param name="Where">The seat to stand at, or the room it is in.</param>
/// <param name="DoubtLeft">Share of the doubt about the decision, as far as it comes of not knowing the house, that is left after this one and those before it, 0 to 1.</param>
public sealed record NextReading(Spot Transmitter, int LevelIndex, Point2 Plan, double HeightMetres, string Where, double DoubtLeft);
