using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>
/// A house prepared for computing its links, with the direct or the full model. What all spots share (angle tables, the power
/// balance of the rooms, the player's shadow) is computed once, here.
/// </summary>
public sealed class LinkModel
{
    private readonly Dictionary<string, Lazy<LinkModel>> without = [];

    /// <summary>Prepares a house.</summary>
    public LinkModel(House house, ModelDepth depth = ModelDepth.Full)
        : this(Scene.Compile(house), depth)
    {
    }

    /// <summary>
    /// Prepares a house with people in some seats. They are obstacles for every link but their own, which counts its own player in
    /// another way; a seat that does not say where it faces has nobody in it.
    /// </summary>
    /// <param name="house">The house.</param>
    /// <param name="depth">How much of the physics is computed.</param>
    /// <param name="occupied">The seats with people in them.</param>
    public LinkModel(House house, ModelDepth depth, IReadOnlyCollection<Seat> occupied)
        : this(house, depth, occupied, null)
    {
    }

    private LinkModel(House house, ModelDepth depth, IReadOnlyCollection<Seat> occupied, LinkModel? akin)
        : this(Scene.Compile(house with { Fixtures = [.. house.Fixtures, .. occupied.SelectMany(Body.Of)] }), depth, akin)
    {
        Occupied = [.. occupied.Where(seat => seat.FacingDegrees is not null)];
        foreach (Seat seat in Occupied)
        {
            without.Add(seat.Name, new Lazy<LinkModel>(() => new LinkModel(this, seat)));
        }
    }

    /// <summary>Prepares a scene.</summary>
    public LinkModel(Scene scene, ModelDepth depth = ModelDepth.Full)
        : this(scene, depth, null)
    {
    }

    // The same house without one seat's player.
    private LinkModel(LinkModel all, Seat seat)
        : this(all.Scene.Without(seat), all.Depth, all) =>
        Occupied = [.. all.Occupied.Where(other => other.Name != seat.Name)];

    private LinkModel(Scene scene, ModelDepth depth, LinkModel? akin)
    {
        Scene = scene;
        Depth = depth;
        Radios = new RadioPair(scene.House.Console, scene.House.Controller);
        Paths = new HousePaths(scene, depth, akin?.Paths);
    }

    // The same house with other radios.
    private LinkModel(LinkModel near, Radio console, Radio controller)
    {
        Scene = near.Scene.With(console, controller);
        Depth = near.Depth;
        Occupied = near.Occupied;
        Radios = new RadioPair(console, controller);
        Paths = near.Paths;
        foreach ((string seat, Lazy<LinkModel> own) in near.without)
        {
            without.Add(seat, new Lazy<LinkModel>(() => own.Value.With(console, controller)));
        }
    }

    /// <summary>The house, laid out for tracing.</summary>
    public Scene Scene { get; }

    /// <summary>The house; people in its seats are among its fixtures.</summary>
    public House House => Scene.House;

    /// <summary>How much of the physics is computed.</summary>
    public ModelDepth Depth { get; }

    /// <summary>The seats whose people count as obstacles.</summary>
    public IReadOnlyList<Seat> Occupied { get; } = [];

    /// <summary>The two radios, where a spot has no other.</summary>
    public RadioPair Radios { get; }

    /// <summary>The two radios of a spot's links.</summary>
    public RadioPair RadiosAt(Spot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        return spot.Radio is { } radio ? new RadioPair(radio, Radios.Controller) : Radios;
    }

    /// <summary>Spread of a material's loss from place to place because of its layers' tolerances, dB; 0 without layers.</summary>
    internal double ToleranceSpreadDb(int material) => Paths.ToleranceSpreadDb(material);

    /// <summary>Whatever finds the paths of its links.</summary>
    internal HousePaths Paths { get; }

    /// <summary>The model for a seat's own link: without the boxes of its own player.</summary>
    internal LinkModel SeenFrom(Seat seat) => without.TryGetValue(seat.Name, out Lazy<LinkModel>? own) ? own.Value : this;

    /// <summary>The model of an edited house with people in some seats. What belongs to materials that both houses have is reused.</summary>
    internal LinkModel Of(House edited, IReadOnlyCollection<Seat> occupied) => new(edited, Depth, occupied, this);

    /// <summary>The model of the same house with other radios.</summary>
    internal LinkModel With(Radio console, Radio controller) => new(this, console, controller);

    /// <summary>Everything about one spot that its links share.</summary>
    internal SpotModel For(Spot spot) => Paths.For(spot);

    /// <summary>
    /// Everything about one seat that links computed backwards share: given a place and where the player in the seat looks, it
    /// gives the loss for a console at that place.
    /// </summary>
    internal SpotModel BackFrom(Seat seat) =>
        SeenFrom(seat).Paths.From(new Spot(seat.Name, seat.LevelIndex, seat.Plan, seat.HandsMetres), true);
}

/// <summary>How much of the physics is computed.</summary>
public enum ModelDepth
{
    /// <summary>The straight line and the table loss of everything on it.</summary>
    Direct,

    /// <summary>Angles, edges, openings, reflections, the diffuse field and the player's body.</summary>
    Full,
}
