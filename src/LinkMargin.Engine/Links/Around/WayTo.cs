using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Links.Around;

/// <summary>The best way from a console to a bend.</summary>
/// <param name="Before">The bend before it; −1 where the console is seen directly.</param>
/// <param name="From">The place its last leg comes from.</param>
/// <param name="Metres">Its length.</param>
/// <param name="LossDb">What stands in its way, dB.</param>
/// <param name="BendDb">What its own bend, if it has one, costs, dB.</param>
internal readonly record struct WayTo(int Before, Point3 From, double Metres, double LossDb, double BendDb);
