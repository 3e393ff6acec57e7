using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Readings;

/// <summary>
/// What readings on one link say of that link alone, beyond what they say of materials: how much more than the model it
/// loses. The model leaves out furniture and pipes that stay where they are, so a link that was read is known better than
/// one that was not.
/// </summary>
/// <param name="From">One end.</param>
/// <param name="To">The other; a link loses as much both ways.</param>
/// <param name="ShiftDb">How much more it loses than the fitted model says, dB.</param>
/// <param name="SpreadDb">How far that may be out, in place of what the model leaves out, dB.</param>
public sealed record FittedLink(Point3 From, Point3 To, double ShiftDb, double SpreadDb)
{
    /// <summary>What the model leaves out is the same within some two wavelengths: people neither read nor sit to a hand's breadth.</summary>
    private const double SamePlaceMetres = 0.3;

    /// <summary>How far its ends lie from two places, the farther one, metres; infinity where it is another link.</summary>
    public double MetresFrom(Point3 one, Point3 other)
    {
        double away = Math.Min(
            Math.Max(From.DistanceTo(one), To.DistanceTo(other)), Math.Max(From.DistanceTo(other), To.DistanceTo(one)));
        return away <= SamePlaceMetres ? away : double.PositiveInfinity;
    }
}
