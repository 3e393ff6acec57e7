using LinkMargin.Engine.Diffuse;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Tests.Diffuse;

/// <summary>What the diffuse fields of all spots of a house share.</summary>
internal sealed class DiffuseHouse
{
    internal DiffuseHouse(House house)
    {
        Scene = Scene.Compile(house);
        Losses = new LossTables(Scene.Materials, Scene.Band);
        Cells = new Cells(Scene);
        Shell = BalanceBuilder.Build(Scene, Losses, Cells);
    }

    internal Scene Scene { get; }

    internal LossTables Losses { get; }

    internal Cells Cells { get; }

    internal RoomShell Shell { get; }

    internal DiffuseField Of(Spot spot) => new(Scene, Losses, Cells, Shell, Scene.House.PositionOf(spot));
}
