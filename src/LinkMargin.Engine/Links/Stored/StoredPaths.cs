using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Links.Stored;

/// <summary>
/// The paths of a set of links in one house, stored so that they can be evaluated again with other losses. The links share one
/// list of parameters, so one draw of the house's losses applies to them all.
/// </summary>
public sealed class StoredPaths
{
    private readonly ParameterList parameters;

    private StoredPaths(LinkModel model, ParameterList parameters, IReadOnlyList<StoredLink> links)
    {
        this.parameters = parameters;
        Materials = model.Scene.Materials;
        ToleranceSpreadsDb = [.. Materials.Select((_, i) => model.ToleranceSpreadDb(i))];
        Links = links;
    }

    /// <summary>What may be shifted: first each of <see cref="Materials"/> everywhere, in their order, then each place.</summary>
    public IReadOnlyList<LossParameter> Parameters => parameters.All;

    /// <summary>The house's materials.</summary>
    public IReadOnlyList<Material> Materials { get; }

    /// <summary>Spread of each material's loss from place to place because of its layers' tolerances, dB.</summary>
    public IReadOnlyList<double> ToleranceSpreadsDb { get; }

    /// <summary>The links, in the order of the request.</summary>
    public IReadOnlyList<StoredLink> Links { get; }

    /// <summary>Every seat with every spot: spot by spot, each with the seats in their order.</summary>
    public static StoredPaths Of(LinkModel model, IReadOnlyList<Spot> spots, IReadOnlyList<Seat> seats) =>
        Of(model, [.. spots.SelectMany(spot => seats.Select(seat => (spot, seat)))]);

    /// <summary>
    /// Some links of spots with seats, in their order. A spot that is not one of the house's is one of many places that are tried: what can be
    /// computed from the seats is kept for the next.
    /// </summary>
    public static StoredPaths Of(LinkModel model, IReadOnlyList<(Spot Spot, Seat Seat)> pairs)
    {
        var links = new List<StoredRequest>();
        SpotModel? ready = null;
        foreach ((Spot spot, Seat seat) in pairs)
        {
            LinkModel seen = model.SeenFrom(seat);
            SpotModel from = seen != model ? seen.For(spot) : ready is not null && ready.Spot == spot ? ready : ready = model.For(spot);
            bool isTried = !model.House.Spots.Any(own => model.House.PositionOf(own) == model.House.PositionOf(spot));
            links.Add(new(from, model.House.PositionOf(seat), seat.FacingDegrees, isTried));
        }

        return Of(model, links);
    }

    /// <summary>One spot with many places, as means over all directions in which a player may look.</summary>
    public static StoredPaths Of(LinkModel model, Spot spot, IReadOnlyList<Point3> hands)
    {
        SpotModel from = model.For(spot);
        return Of(model, hands.Select(place => new StoredRequest(from, place, null, false)));
    }

    /// <summary>Any links, in their order.</summary>
    internal static StoredPaths Of(LinkModel model, IEnumerable<StoredRequest> links)
    {
        var parameters = new ParameterList(model.Scene);
        return new StoredPaths(model, parameters, Store([.. links], parameters));
    }

    // Many threads find slopes; parameters are numbered link by link, so that their order is always the same.
    private static StoredLink[] Store(StoredRequest[] links, ParameterList parameters)
    {
        var kept = new KeptGradients[links.Length];
        Parallel.For(0, links.Length, i =>
        {
            kept[i] = new KeptGradients();
            links[i].From.Record(links[i].To, links[i].FacingDegrees, links[i].IsSeatShared, kept[i]);
        });
        return [.. kept.Select(one =>
        {
            var recorder = new GradientRecorder(parameters);
            one.GiveTo(recorder);
            return recorder.ToLink();
        })];
    }
}

/// <summary>A link to be stored.</summary>
/// <param name="From">Where it starts.</param>
/// <param name="To">Where it ends.</param>
/// <param name="FacingDegrees">Where the player looks; null for the mean over all directions.</param>
/// <param name="IsSeatShared">Whether links from many spots end there.</param>
internal readonly record struct StoredRequest(SpotModel From, Point3 To, double? FacingDegrees, bool IsSeatShared);
