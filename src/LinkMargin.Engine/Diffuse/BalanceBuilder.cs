using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Diffuse;

/// <summary>Measures the surfaces of a house's cells: what they absorb, pass and throw back.</summary>
internal sealed class BalanceBuilder
{
    /// <summary>
    /// Absorbing area of furnishings that no house file lists (carpets, curtains, seats, what stands about), share of the
    /// floor's area. From memory: reverberation of furnished against empty rooms.
    /// </summary>
    internal const double FurnishingShare = 0.15;

    private readonly Scene scene;
    private readonly LossTables losses;
    private readonly Cells cells;
    private readonly RoomShell shell;

    private BalanceBuilder(Scene scene, LossTables losses, Cells cells)
    {
        this.scene = scene;
        this.losses = losses;
        this.cells = cells;
        shell = new RoomShell(cells.Count);
    }

    internal static RoomShell Build(Scene scene, LossTables losses, Cells cells)
    {
        var builder = new BalanceBuilder(scene, losses, cells);
        for (int level = 0; level < scene.House.Levels.Count; level++)
        {
            foreach (WallRun run in WallRun.Of(scene.House.Levels[level], level, cells))
            {
                builder.AddRun(scene.House.Levels[level], run);
            }

            builder.AddPlates(level);
        }

        builder.AddFixtures();
        return builder.shell;
    }

    private AngleTable? TableOf(Material? material) => material is null ? null : losses[scene.NumberOf(material)];

    private void AddRun(Level level, WallRun run)
    {
        Wall wall = run.Wall;
        double top = Math.Min(wall.TopMetres, level.HeightMetres);
        double left = run.From;

        // From opening to opening: the wall between them, the wall over and under them, and what fills them.
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
        Add(run.From, run.To, top, level.HeightMetres, null); // over a wall that is not full, and under one that hangs
        Add(run.From, run.To, 0, wall.BaseMetres, null);

        void Add(double from, double to, double bottom, double head, Material? material)
        {
            const double LeastMetres = 1e-3;
            if (to - from < LeastMetres || head - bottom < LeastMetres || (material is null && run.One == run.Other))
            {
                return;
            }

            Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start);
            Point2 start = wall.Start + (from * along), end = wall.Start + (to * along);
            double low = level.ElevationMetres + bottom, high = level.ElevationMetres + head;
            shell.AddPanel(
                run.One, run.Other, [start.At(low), end.At(low), end.At(high), start.At(high)], TableOf(material));
        }
    }

    // Floor and ceiling: each room's share with each room over and under it, measured square by square, and what it sees of
    // them as one facet with their mean.
    private void AddPlates(int level)
    {
        Level here = scene.House.Levels[level];
        foreach ((Room room, int i) in here.Rooms.Select((room, i) => (room, i)))
        {
            int cell = cells.OfRoom(level, i);
            double area = room.Outline.AreaSquareMetres;
            shell.Balance.Absorb(cell, area * FurnishingShare);
            shell.Balance.Fill(cell, area * here.HeightMetres);
            LevelMirror floor = scene.Plates[2 * level], ceiling = scene.Plates[(2 * level) + 1];
            AddPlate(cell, room, level + 1, ceiling, here.Above is not null && level + 1 < scene.House.Levels.Count, true);
            AddPlate(cell, room, level - 1, floor, level > 0 && scene.House.Levels[level - 1].Above is not null, false);
        }
    }

    // Exchange over a ceiling is booked from below; a floor books only what hangs over out of doors or stands on the ground.
    private void AddPlate(int cell, Room room, int otherLevel, LevelMirror plate, bool hasOther, bool isCeiling)
    {
        AngleTable table = losses[plate.Material];
        IReadOnlyList<Level> levels = scene.House.Levels;
        IReadOnlyList<Room> rooms = hasOther ? levels[otherLevel].Rooms : [];

        // Both levels see a hole between them in one plane, half way through the floor, where one's air becomes the other's.
        int lower = Math.Min(otherLevel, plate.Level);
        double holeHeight = hasOther ? (levels[lower].CeilingMetres + levels[lower + 1].ElevationMetres) / 2 : plate.Height;
        foreach (PlatePart part in PlatePart.Of(cells, scene.Frame, room.Outline, otherLevel, rooms, plate.Voids))
        {
            AngleTable? filling = part.IsVoid ? null : table;
            if (isCeiling || part.Other == Cells.Outdoors)
            {
                shell.AddToBalance(cell, part.Other, part.SquareMetres, filling);
            }

            shell.See(cell, new Facet(
                part.Other,
                filling?.DiffuseReflectance ?? 0,
                filling?.DiffuseTransmittance ?? 1,
                [.. part.Outline.Select(c => c.At(part.IsVoid ? holeHeight : plate.Height))],
                part.IsVoid));
        }
    }

    private void AddFixtures()
    {
        int hollow = 0;
        foreach (FixtureBox box in scene.Boxes)
        {
            int room = cells.RoomAt(box.Level, box.Centre);
            if (box.IsShell)
            {
                AddHollow(cells.OfShell(hollow++), room, box);
                continue;
            }

            // A solid thing takes what strikes it and neither comes back nor comes out on the other side.
            AngleTable table = losses[box.Material];
            double throughDb = table.LossDb(1) * (box.BulkThickness is double thickness ? box.MeanChordMetres / thickness : 1);
            double kept = Math.Max(0, 1 - table.DiffuseReflectance - Decibels.ToPowerRatio(-throughDb));
            shell.Balance.Absorb(room, box.SurfaceSquareMetres * kept);
        }
    }

    private void AddHollow(int inside, int room, FixtureBox box)
    {
        shell.Balance.Fill(inside, box.CubicMetres);
        foreach (BoxFace face in box.Faces())
        {
            AngleTable? table = (box.OpenSides & face.Side) != 0 ? null : losses[box.Material];
            shell.AddPanel(inside, room, face.Outline, table);
        }
    }
}
