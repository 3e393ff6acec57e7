using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Links;

/// <summary>One way the energy takes on a link. Geometry only.</summary>
/// <param name="Kind">Which way.</param>
/// <param name="Points">Its corners, the spot first, the seat last; at least two.</param>
/// <param name="LengthMetres">Its length, metres.</param>
/// <param name="Crossings">What it meets, in order from the spot.</param>
public sealed record Path(PathKind Kind, IReadOnlyList<Point3> Points, double LengthMetres, IReadOnlyList<Crossing> Crossings);
