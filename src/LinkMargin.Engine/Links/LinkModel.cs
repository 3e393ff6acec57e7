using LinkMargin.Engine.Diffuse;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links.Around;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links;

/// <summary>
/// A house ready to answer for its links, at a depth of model. What all spots share (angle tables, the power balance of the
/// rooms, the player's shadow) is worked out once, here.
/// </summary>
public sealed class LinkModel
{
    private readonly LossTables? losses;
    private readonly Cells? cells;
    private readonly RoomShell? shell;
    private readonly BendGraph? bends;
    private readonly BodyShadow? body;

    /// <summary>Prepares a house.</summary>
    public LinkModel(House house, ModelDepth depth = ModelDepth.Full)
        : this(Scene.Compile(house), depth)
    {
    }

    /// <summary>Prepares a scene.</summary>
    public LinkModel(Scene scene, ModelDepth depth = ModelDepth.Full)
    {
        Scene = scene;
        Depth = depth;
        Radios = new RadioPair(scene.House.Console, scene.House.Controller);
        if (depth == ModelDepth.Direct)
        {
            return;
        }

        losses = new LossTables(scene.Materials, scene.Band);
        cells = new Cells(scene);
        shell = BalanceBuilder.Build(scene, losses, cells);
        bends = new BendGraph(scene, losses);
        body = new BodyShadow(scene.Band.Equivalent.WavelengthMetres);
    }

    /// <summary>The house, laid out.</summary>
    public Scene Scene { get; }

    /// <summary>The house.</summary>
    public House House => Scene.House;

    /// <summary>How much of the physics is taken in.</summary>
    public ModelDepth Depth { get; }

    /// <summary>The two radios.</summary>
    public RadioPair Radios { get; }

    /// <summary>Everything about one spot that its links share.</summary>
    internal SpotModel For(Spot spot) => Depth == ModelDepth.Direct
        ? new DirectSpotModel(Scene, spot)
        : new FullSpotModel(Scene, spot, losses!, cells!, shell!, bends!, body!);
}
