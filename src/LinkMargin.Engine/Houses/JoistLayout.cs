namespace LinkMargin.Engine.Houses;

/// <summary>How the joists of one floor lie.</summary>
/// <param name="RunDegrees">Direction along a joist, degrees anticlockwise from the x axis.</param>
/// <param name="SpacingMetres">Distance between centres, metres.</param>
/// <param name="FirstOffsetMetres">
/// Distance of one joist's centre line from the plan's origin, metres, measured to the left of the run direction; null
/// where unknown, and then every position is equally likely.
/// </param>
public sealed record JoistLayout(double RunDegrees, double SpacingMetres, double? FirstOffsetMetres);
