using System.Runtime.CompilerServices;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Links;

/// <summary>Whatever finds the paths of a house's links. It knows no radios, so houses that differ in nothing else share it.</summary>
internal sealed class HousePaths
{
    private readonly Scene scene;
    private readonly TracedHouse? traced; // for the full model only, as are the sources
    private readonly IPathSource[] sources = [];
    private readonly ConditionalWeakTable<Spot, SpotModel> ofSpots = []; // as long as the spots are in use
    private SpotModel? recent; // the last one requested

    /// <summary>Prepares a scene.</summary>
    /// <param name="scene">The house, laid out for tracing.</param>
    /// <param name="depth">How much of the physics is computed.</param>
    /// <param name="akin">Those of a house of which this one is a variant: what looks the same there is not computed again; null for none.</param>
    internal HousePaths(Scene scene, ModelDepth depth, HousePaths? akin)
    {
        this.scene = scene;
        if (depth == ModelDepth.Direct)
        {
            return;
        }

        traced = new TracedHouse(
            scene,
            new LossTables(scene.Materials, scene.Band, akin?.traced?.Losses),
            akin?.traced?.Body ?? new BodyShadow(scene.Band.Equivalent));
        sources = PathSources.In(traced, akin?.sources ?? []);
    }

    /// <summary>Spread of a material's loss from place to place because of its layers' tolerances, dB; 0 without layers.</summary>
    internal double ToleranceSpreadDb(int material) => traced?.Losses[material].ToleranceSpreadDb ?? 0;

    /// <summary>Everything about one spot that its links share.</summary>
    internal SpotModel For(Spot spot)
    {
        // Fields of several levels, and their draws, request the same spot again and again; searches, on several threads, several spots.
        SpotModel? last = Volatile.Read(ref recent);
        if (last is null || last.Spot != spot)
        {
            Volatile.Write(ref recent, last = ofSpots.GetValue(spot, one => From(one, false)));
        }

        return last;
    }

    /// <summary>The same without keeping it; from a seat, for links computed backwards.</summary>
    /// <param name="spot">The spot, or the seat's hands.</param>
    /// <param name="isBackwards">Whether it is a seat.</param>
    internal SpotModel From(Spot spot, bool isBackwards) => traced is null
        ? new DirectSpotModel(scene, spot)
        : new FullSpotModel(traced, sources, spot, isBackwards);
}
