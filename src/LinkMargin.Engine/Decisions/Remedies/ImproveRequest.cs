using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>What a search for remedies may use.</summary>
/// <param name="Spot">The spot to improve.</param>
/// <param name="Panels">What a side of a rack may be made of instead.</param>
/// <param name="Controllers">The classes of controller there are.</param>
public sealed record ImproveRequest(Spot Spot, IReadOnlyList<Material> Panels, IReadOnlyList<Radio> Controllers)
{
    /// <summary>Farthest that a receiver on a lead is from the wall it is stuck to or the top it lies on, metres.</summary>
    public const double GreatestFromFaceMetres = 0.1;

    /// <summary>
    /// Air that an open side needs before it, metres: less than a wavelength away a wall or a cupboard closes it again (judgement).
    /// </summary>
    public const double LeastFreeAirMetres = 0.1;

    /// <summary>A remedy that gains less is not told, dB: below what anybody could notice.</summary>
    public const double LeastGainDb = 0.5;
}
