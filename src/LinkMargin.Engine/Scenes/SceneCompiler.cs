using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>Turns a house into a scene.</summary>
internal sealed class SceneCompiler
{
    // A wall whose top is this close to the ceiling is a full wall.
    private const double FullHeightSlackMetres = 0.001;

    // Four wavelengths.
    private const double LeastMirrorMetres = 0.5;

    private readonly Dictionary<int, Material> wholeFloors = [];
    private readonly House house;
    private readonly Band band;
    private readonly Numbered<Material> materials = new();
    private readonly Numbered<string> names = new();
    private readonly MirrorCollector mirrors;

    private SceneCompiler(House house, Band band)
    {
        this.house = house;
        this.band = band;
        mirrors = new MirrorCollector(house.Levels.SelectMany(level => level.Walls).Select(wall => (wall.Start, wall.End)));
    }

    internal static Scene Compile(House house, Band band) => new SceneCompiler(house, band).Compile();

    private Scene Compile()
    {
        Storey[] storeys = [.. house.Levels.Select((_, i) => StoreyAt(i))];
        FloorSheets[] floors = [.. house.Levels.SkipLast(1).Select((_, i) => FloorOver(i)).OfType<FloorSheets>()];
        var boxes = new List<FixtureBox>();
        var uprights = new List<UprightMirror>(mirrors.All);
        foreach (Fixture fixture in house.Fixtures)
        {
            int first = IsLarge(fixture) ? uprights.Count : -1;
            var box = new FixtureBox(
                fixture,
                house.Levels[fixture.LevelIndex],
                materials.Of,
                names.Of(fixture.Name),
                first,
                mirrors.Count + (boxes.Count * FixtureBox.Planes));
            boxes.Add(box);
            if (first >= 0)
            {
                uprights.AddRange(SidesOf(box, first));
            }
        }

        LevelMirror[] plates = [.. house.Levels.SelectMany((_, i) => PlatesOf(i))];
        return new Scene(new CompiledHouse
        {
            House = house,
            Band = band,
            Storeys = storeys,
            Floors = floors,
            Fixtures = new FixtureBoxes(boxes),
            Materials = materials.All,
            Names = names.All,
            Uprights = [.. uprights],
            Plates = plates,
            FloorLayers = FloorLayers(),
        });
    }

    private Storey StoreyAt(int index)
    {
        Level level = house.Levels[index];
        double floor = level.ElevationMetres;

        // Between ceiling and floor above, a wall's line continues as plate, blocking or masonry, so a full wall reaches up
        // to the floor above and no line slips over it through the joist bay.
        double reach = index + 1 < house.Levels.Count
            ? Math.Max(level.CeilingMetres, house.Levels[index + 1].ElevationMetres)
            : level.CeilingMetres;
        WallPanel[] walls = [.. level.Walls.Select(wall => WallAt(wall, level, reach))];
        IReadOnlyList<StraightRun> runs = StraightRun.Of(walls);
        return new Storey(
            floor,
            reach,
            new WallPanels(index, walls),
            new WallFronts(JoinedWall.Of(runs, walls)),
            WallJoint.Of(runs, walls),
            OpenGap.Of(runs, walls, names.All));
    }

    private WallPanel WallAt(Wall wall, Level level, double reach)
    {
        bool touches = wall.TopMetres >= level.HeightMetres - FullHeightSlackMetres;
        double low = level.ElevationMetres + wall.BaseMetres;
        var rise = VerticalExtent.Of(low, touches ? reach : level.ElevationMetres + wall.TopMetres, level.ElevationMetres, reach);
        int material = materials.Of(wall.Material);
        OpeningPanel[] openings = OpeningsIn(wall, level.ElevationMetres);
        int name = names.Of(wall.Name);
        int mirror = mirrors.Add(wall.Start, wall.End, rise, material, name, openings);
        return new WallPanel(wall.Start, wall.End, rise, mirror, material, name, openings);
    }

    /// <summary>
    /// Whether a fixture is some wavelengths across, so that its sides reflect paths of their own and paths are diffracted at its
    /// corners; smaller ones only scatter the diffuse field.
    /// </summary>
    internal static bool IsLarge(Fixture fixture) =>
        Math.Max(fixture.SizeX, fixture.SizeY) >= LeastMirrorMetres && fixture.ToMetres - fixture.FromMetres >= LeastMirrorMetres;

    private static IEnumerable<UprightMirror> SidesOf(FixtureBox box, int first)
    {
        for (int i = 0; i < FixtureBox.PanelSides.Length; i++)
        {
            Point2 start = box.Corners[i], end = box.Corners[(i + 1) % FixtureBox.PanelSides.Length];
            var side = new MirrorCollector([(start, end)]);
            int material = box.IsShell ? box.PanelOn(FixtureBox.PanelSides[i]) : box.Material;
            side.Add(start, end, box.VerticalExtent, material, box.Name, []);
            UprightMirror mirror = side.All[0];
            int outside = box.IsShell ? 0 : -Math.Sign(mirror.Before(box.Centre.X, box.Centre.Y));
            yield return mirror with { Number = first + i, IsFixture = true, OnlySide = outside };
        }
    }

    private IEnumerable<LevelMirror> PlatesOf(int index)
    {
        Level level = house.Levels[index];
        FloorAbove? below = index > 0 ? house.Levels[index - 1].Above : null;
        yield return new LevelMirror(
            level.ElevationMetres,
            true,
            materials.Of(below is null ? house.Surroundings.Ground : WholeFloorOf(index - 1)),
            index,
            below?.Voids ?? []);
        bool isTop = index == house.Levels.Count - 1 || level.Above is null;
        yield return new LevelMirror(
            level.CeilingMetres,
            false,
            materials.Of(isTop ? house.Surroundings.TopCeiling : WholeFloorOf(index)),
            index,
            isTop ? [] : level.Above!.Voids);
    }

    private Dictionary<int, int[]> FloorLayers()
    {
        var layers = new Dictionary<int, int[]>();
        foreach ((int level, Material whole) in wholeFloors)
        {
            layers[materials.Of(whole)] =
                [.. house.Levels[level].Above!.BuildUp.Layers.Select(layer => layer.Material).OfType<Material>().Distinct().Select(materials.Of)];
        }

        return layers;
    }

    private Material WholeFloorOf(int index)
    {
        if (!wholeFloors.TryGetValue(index, out Material? whole))
        {
            wholeFloors.Add(index, whole = WholeFloor.Of(house.Levels[index].Above!.BuildUp));
        }

        return whole;
    }

    // A jamb within a hair of the wall's end, or of the next opening, counts as there: rounding leaves no sliver of wall between.
    private OpeningPanel[] OpeningsIn(Wall wall, double floor)
    {
        double length = wall.LengthMetres, before = 0;
        var openings = new List<OpeningPanel>();
        foreach (Opening opening in wall.Openings.OrderBy(o => o.OffsetMetres))
        {
            double from = opening.OffsetMetres, to = from + opening.WidthMetres;
            from = Math.Abs(from - before) <= GeometryTolerances.SlackMetres ? before : from;
            before = Math.Abs(to - length) <= GeometryTolerances.SlackMetres ? length : to;
            openings.Add(new OpeningPanel(
                from,
                before,
                floor + opening.SillMetres,
                floor + opening.SillMetres + opening.HeightMetres,
                opening.Filling is Material filling ? materials.Of(filling) : -1,
                names.Of(opening.Name)));
        }

        return [.. openings];
    }

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

        var whole = new FloorSheet((top + level.CeilingMetres) / 2, materials.Of(WholeFloorOf(index)), null);
        return new FloorSheets(
            index, band.Equivalent.WavelengthMetres, names.Of(above.BuildUp.Name), whole, sheets, above.Voids);
    }

    private static RibLayout LayoutOf(Ribs ribs, JoistLayout? layout) => new(
        layout?.RunDegrees ?? 0,
        ribs.WidthMetres,
        ribs.DepthMetres,
        layout?.SpacingMetres ?? ribs.SpacingMetres,
        layout?.FirstOffsetMetres);
}

/// <summary>One level's walls, and the heights between which they stand, above the lowest floor.</summary>
/// <param name="Low">Its floor.</param>
/// <param name="High">Its ceiling, or the floor above.</param>
/// <param name="Walls">Its walls, for straight lines.</param>
/// <param name="Fronts">The same for fronts.</param>
/// <param name="Joints">Where they end and meet.</param>
/// <param name="Gaps">Where they are open.</param>
internal sealed record Storey(
    double Low, double High, WallPanels Walls, WallFronts Fronts, IReadOnlyList<WallJoint> Joints, IReadOnlyList<OpenGap> Gaps);

/// <summary>Gives each distinct thing a number, in the order they come.</summary>
internal sealed class Numbered<T>
    where T : notnull
{
    private readonly Dictionary<T, int> numbers = [];
    private readonly List<T> all = [];

    internal IReadOnlyList<T> All => all;

    internal int Of(T thing)
    {
        if (!numbers.TryGetValue(thing, out int number))
        {
            number = all.Count;
            numbers.Add(thing, number);
            all.Add(thing);
        }

        return number;
    }
}
