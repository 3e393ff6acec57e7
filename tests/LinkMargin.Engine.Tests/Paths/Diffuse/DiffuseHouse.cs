using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>What the diffuse fields of all spots of a house share.</summary>
internal sealed class DiffuseHouse
{
    internal DiffuseHouse(House house)
    {
        Scene = Scene.Compile(house);
        Losses = new LossTables(Scene.Materials, Scene.Band);
        Cells = new Cells(Scene);
        Shell = new RoomShell(SurfaceSurvey.Of(Scene, Cells), Losses);
    }

    internal Scene Scene { get; }

    internal LossTables Losses { get; }

    internal Cells Cells { get; }

    internal RoomShell Shell { get; }

    internal DiffuseField Of(Spot spot) => Of(Scene.House.PositionOf(spot));

    internal DiffuseField Of(Point3 console) => new(Cells, Shell, console);
}
