using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths;

/// <summary>A house ready for tracing, with what every kind of path needs.</summary>
/// <param name="Scene">The house, laid out.</param>
/// <param name="Losses">What its materials lose at every angle.</param>
/// <param name="Body">What the player's body leaves of a path.</param>
internal sealed record TracedHouse(Scene Scene, LossTables Losses, BodyShadow Body)
{
    /// <summary>Wavelength of the frequency that stands for the band, metres.</summary>
    internal double WavelengthMetres { get; } = Scene.Band.Equivalent.WavelengthMetres;

    /// <summary>Power that arrives over a length of free space, share of the power sent between isotropic antennas.</summary>
    internal double FreeSpaceRatio(double lengthMetres) => FreeSpaceLoss.PowerRatio(lengthMetres, WavelengthMetres);
}
