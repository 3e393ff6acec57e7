using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>Measures the surfaces of a house's cells.</summary>
internal sealed class SurfaceSurvey
{
    /// <summary>
    /// Absorbing area of furnishings that no house file lists (carpets, curtains, seats, loose items), share of the floor's
    /// area. From memory: reverberation of furnished against empty rooms.
    /// </summary>
    internal const double FurnishingShare = 0.15;

    private readonly Scene scene;
    private readonly Cells cells;
    private readonly CellSurfaces surfaces;
    private readonly Covers covers;

    private SurfaceSurvey(Scene scene, Cells cells)
    {
        this.scene = scene;
        this.cells = cells;
        surfaces = new CellSurfaces(cells.Count, cells.GridOf);
        covers = new Covers(scene, cells);
    }

    internal static CellSurfaces Of(Scene scene, Cells cells)
    {
        var survey = new SurfaceSurvey(scene, cells);
        for (int level = 0; level < scene.House.Levels.Count; level++)
        {
            foreach (WallRun run in WallRun.Of(scene.House.Levels[level], level, cells))
            {
                survey.AddRun(scene.House.Levels[level], run);
            }

            survey.AddPlates(level);
        }

        survey.AddFixtures();
        return survey.surfaces;
    }

    private Sheet[] SheetOf(Material? material) => material is null ? [] : [new Sheet(scene.NumberOf(material))];

    private void AddRun(Level level, WallRun run)
    {
        Wall wall = run.Wall;
        double top = Math.Min(wall.TopMetres, level.HeightMetres);
        double left = run.From;
        SurfacePlane plane = SurfacePlane.Of(wall, level.ElevationMetres);

        // From opening to opening: the wall between them, the wall above and below them, and what fills them.
        foreach (Opening opening in wall.Openings.OrderBy(o => o.OffsetMetres))
        {
            double start = Math.Clamp(opening.OffsetMetres, left, run.To);
            double end = Math.Clamp(opening.OffsetMetres + opening.WidthMetres, start, run.To);
            double head = Math.Min(opening.SillMetres + opening.HeightMetres, top);
            Add(left, start, wall.BaseMetres, top, wall.Material);
            Add(start, end, wall.BaseMetres, opening.SillMetres, wall.Material);
            Add(start, end, opening.SillMetres, head, opening.Filling);
            Add(start, end, head, top, wall.Material);
            left = end;
        }

        Add(left, run.To, wall.BaseMetres, top, wall.Material);
        Add(run.From, run.To, top, level.HeightMetres, null); // above a wall that is not full height, and below one that starts above the floor
        Add(run.From, run.To, 0, wall.BaseMetres, null);

        void Add(double from, double to, double bottom, double head, Material? material)
        {
            if (to - from <= GeometryTolerances.SlackMetres || head - bottom <= GeometryTolerances.SlackMetres || (material is null && run.One == run.Other))
            {
                return;
            }

            // In front of the wall itself a solid thing changes little, since little passes there; but it covers an opening.
            bool isOpening = !ReferenceEquals(material, wall.Material);
            AddParts(plane, covers.Cut(
                plane,
                new Rectangle(from, to, bottom, head),
                new CoveredPart(run.One, run.Other, SheetOf(material)),
                wall.HalfThicknessMetres,
                null,
                isOpening));
        }
    }

    private void AddParts(in SurfacePlane plane, IEnumerable<CoveredPart> parts)
    {
        foreach (CoveredPart part in parts)
        {
            surfaces.AddPanel(part.Behind, part.Before, plane.Corners(part.Rectangle), part.Sheets, plane.Normal);
        }
    }

    // Floor and ceiling: the part that each room shares with each room above and below it, as one facet of the same area and middle.
    private void AddPlates(int level)
    {
        Level here = scene.House.Levels[level];
        foreach ((Room room, int i) in here.Rooms.Select((room, i) => (room, i)))
        {
            int cell = cells.OfRoom(level, i);
            double area = room.Outline.AreaSquareMetres;
            surfaces.Furnish(cell, area * FurnishingShare);
            surfaces.Fill(cell, area * here.HeightMetres);
            LevelMirror floor = scene.Plates[2 * level], ceiling = scene.Plates[(2 * level) + 1];
            AddPlate(cell, room, level + 1, ceiling, here.Above is not null && level + 1 < scene.House.Levels.Count, true);
            AddPlate(cell, room, level - 1, floor, level > 0 && scene.House.Levels[level - 1].Above is not null, false);
        }
    }

    // A ceiling is added with the floor above it; a floor adds only what lies over outdoors or on the ground.
    private void AddPlate(int cell, Room room, int otherLevel, LevelMirror plate, bool hasOther, bool isCeiling)
    {
        IReadOnlyList<Level> levels = scene.House.Levels;
        IReadOnlyList<Room> rooms = hasOther ? levels[otherLevel].Rooms : [];

        // Both levels see a hole between them in one plane, half way through the floor, where one's air becomes the other's.
        int lower = Math.Min(otherLevel, plate.Level);
        double holeHeight = hasOther ? (levels[lower].CeilingMetres + levels[lower + 1].ElevationMetres) / 2 : plate.Height;
        var inwards = new Point3(0, 0, isCeiling ? -1 : 1);
        var outwards = new Point3(0, 0, isCeiling ? 1 : -1);
        foreach (PlatePart part in PlatePart.Of(cells, scene.Frame, room.Outline, otherLevel, rooms, plate.Voids))
        {
            if (!isCeiling && part.Other != Cells.Outdoors)
            {
                continue;
            }

            Sheet[] sheets = part.IsVoid ? [] : [new Sheet(plate.Material)];
            double behind = part.IsVoid ? holeHeight : part.Other == Cells.Outdoors ? plate.Height : levels[otherLevel].ElevationMetres;
            surfaces.AddPanel(
                new Facet(part.Other, sheets, At(part.IsVoid ? holeHeight : plate.Height)) { Normal = inwards, IsMean = true },
                new Facet(cell, sheets, At(behind)) { Normal = outwards, IsMean = part.Other != Cells.Outdoors });

            Point3[] At(double height) => [.. part.Outline.Select(corner => corner.At(height))];
        }
    }

    // Shells first: what covers their sides is known then, and covers nothing else.
    private void AddFixtures()
    {
        foreach (FixtureBox box in cells.Shells)
        {
            AddShell(box);
        }

        foreach (FixtureBox box in scene.Boxes.Where(box => !box.IsShell))
        {
            // What covers an opening is part of what closes it.
            double square = Math.Max(0, (box.SurfaceSquareMetres * (box.IsBody ? Body.Body.SkinOverBoxes : 1)) - (2 * covers.CoveredBy(box)));
            double depths = box.BulkThickness is double thickness ? box.MeanChordMetres / thickness : 1;
            surfaces.Add(new Solid(cells.Around(box), square, box.Material, depths, box.HasMirrors));
        }
    }

    private void AddShell(FixtureBox box)
    {
        int inside = cells.OfShell(box), outside = cells.Around(box);
        surfaces.Fill(inside, box.CubicMetres);
        surfaces.Stand(outside, box, inside);
        for (int side = 0; side < FixtureBox.AllSides.Length; side++)
        {
            SurfacePlane plane = SurfacePlane.Of(box, side);
            int material = box.PanelOn(FixtureBox.AllSides[side]);
            bool isMirror = box.MirrorOf(FixtureBox.AllSides[side]) >= 0;
            var between = new CoveredPart(inside, outside, material == FixtureBox.Open ? [] : [new Sheet(material, null, isMirror)]);
            foreach (Rectangle free in covers.FreeOf(box, side, plane.ShadowOf(box)))
            {
                AddParts(plane, covers.Cut(plane, free, between, 0, box, true));
            }
        }
    }
}
