using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Scenes;

/// <summary>Turns a house into a scene.</summary>
internal sealed class SceneCompiler
{
    // A wall whose top comes this near to the ceiling is a full wall.
    private const double FullHeightSlackMetres = 0.001;

    private readonly House house;
    private readonly Band band;
    private readonly Numbered<Material> materials = new();
    private readonly Numbered<string> names = new();

    private SceneCompiler(House house, Band band)
    {
        this.house = house;
        this.band = band;
    }

    internal static Scene Compile(House house, Band band) => new SceneCompiler(house, band).Compile();

    private Scene Compile()
    {
        Storey[] storeys = [.. house.Levels.Select((_, i) => StoreyAt(i))];
        FloorSheets[] floors = [.. house.Levels.SkipLast(1).Select((_, i) => FloorOver(i)).OfType<FloorSheets>()];
        var fixtures = new FixtureBoxes([.. house.Fixtures.Select(f =>
            new FixtureBox(f, house.Levels[f.LevelIndex].ElevationMetres, materials.Of(f.Material), names.Of(f.Name)))]);
        return new Scene(house, band, storeys, floors, fixtures, materials.All, names.All);
    }

    private Storey StoreyAt(int index)
    {
        Level level = house.Levels[index];
        double floor = level.ElevationMetres;

        // Between ceiling and floor above, a wall's line goes on as plate, blocking or masonry, so a full wall reaches up
        // to the floor above and no line slips over it through the joist bay.
        double reach = index + 1 < house.Levels.Count
            ? Math.Max(level.CeilingMetres, house.Levels[index + 1].ElevationMetres)
            : level.CeilingMetres;
        WallPanel[] walls = [.. level.Walls.Select(wall => new WallPanel(
            wall.Start,
            wall.End,
            floor + wall.BaseMetres,
            wall.TopMetres >= level.HeightMetres - FullHeightSlackMetres ? reach : floor + wall.TopMetres,
            materials.Of(wall.Material),
            names.Of(wall.Name),
            [.. wall.Openings.Select(o => OpeningAt(o, floor))]))];
        return new Storey(floor, reach, new WallPanels(index, walls));
    }

    private OpeningPanel OpeningAt(Opening opening, double floor) => new(
        opening.OffsetMetres,
        opening.OffsetMetres + opening.WidthMetres,
        floor + opening.SillMetres,
        floor + opening.SillMetres + opening.HeightMetres,
        opening.Filling is Material filling ? materials.Of(filling) : -1,
        names.Of(opening.Name));

    private FloorSheets? FloorOver(int index)
    {
        Level level = house.Levels[index];
        if (level.Above is not FloorAbove above)
        {
            return null;
        }

        double top = house.Levels[index + 1].ElevationMetres;

        // Where the stated elevations leave more or less room than the build-up needs, it is stretched to fit.
        double stretch = (top - level.CeilingMetres) / above.BuildUp.ThicknessMetres;
        var sheets = new List<FloorSheet>();
        double depth = 0;
        foreach (FloorLayer layer in above.BuildUp.Layers)
        {
            double middle = top - (stretch * (depth + (layer.ThicknessMetres / 2)));
            depth += layer.ThicknessMetres;
            if (layer.Material is Material material)
            {
                sheets.Add(new FloorSheet(middle, materials.Of(material), null));
            }

            if (layer.Joists is Ribs ribs)
            {
                sheets.Add(new FloorSheet(middle, materials.Of(ribs.Material), LayoutOf(ribs, above.Joists)));
            }
        }

        return new FloorSheets(
            index, band.Equivalent.WavelengthMetres, names.Of(above.BuildUp.Name), sheets, above.Voids);
    }

    private static RibLayout LayoutOf(Ribs ribs, JoistLayout? layout) => new(
        layout?.RunDegrees ?? 0,
        ribs.WidthMetres,
        ribs.DepthMetres,
        layout?.SpacingMetres ?? ribs.SpacingMetres,
        layout?.FirstOffsetMetres);
}
