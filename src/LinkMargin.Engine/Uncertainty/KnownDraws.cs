using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// What one basis has drawn of links, for as long as their models are in use: a search that changes one seat asks for the links of all others
/// again, and one that changes a radio asks for the same path losses.
/// </summary>
internal sealed class KnownDraws(UncertaintyBasis basis)
{
    private readonly ConditionalWeakTable<LinkModel, ConcurrentDictionary<(Spot Spot, Seat Seat), LinkAtConfidence>> margins = [];
    private readonly ConditionalWeakTable<HousePaths, ConcurrentDictionary<(Spot Spot, Seat Seat), double[]>> lossesDb = [];

    /// <summary>The draws of single unknowns.</summary>
    internal LatinHypercubeSampler Sampler { get; } = new(basis);

    /// <summary>The margins of a model's links.</summary>
    internal ConcurrentDictionary<(Spot Spot, Seat Seat), LinkAtConfidence> MarginsOf(LinkModel model) => margins.GetValue(model, _ => []);

    /// <summary>The path losses of a model's links in each draw, dB. Models that differ in radios alone share them.</summary>
    internal ConcurrentDictionary<(Spot Spot, Seat Seat), double[]> LossesDbOf(LinkModel model) => lossesDb.GetValue(model.Paths, _ => []);
}
