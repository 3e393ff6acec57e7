using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Diffuse;

/// <summary>A stretch of a wall with one cell on each side all along.</summary>
/// <param name="Wall">The wall.</param>
/// <param name="From">Where the stretch starts, metres from the wall's start.</param>
/// <param name="To">Where it ends.</param>
/// <param name="One">The cell to its left.</param>
/// <param name="Other">The cell to its right.</param>
internal sealed record WallRun(Wall Wall, double From, double To, int One, int Other)
{
    private const double StepMetres = 0.05;

    /// <summary>The walls of a level in such stretches: each is walked in short steps that look to both sides.</summary>
    internal static IEnumerable<WallRun> Of(Level level, int index, Cells cells)
    {
        foreach (Wall wall in level.Walls.Where(wall => wall.LengthMetres > 0))
        {
            double length = wall.LengthMetres;
            int steps = (int)Math.Ceiling(length / StepMetres);
            double width = length / steps;
            Point2 along = (1 / length) * (wall.End - wall.Start), left = new(-along.Y, along.X);
            WallRun? run = null;
            for (int i = 0; i < steps; i++)
            {
                Point2 at = wall.Start + ((i + 0.5) * width * along);
                int one = cells.RoomBeside(index, at, left), other = cells.RoomBeside(index, at, -1 * left);
                if (run is not null && run.One == one && run.Other == other)
                {
                    run = run with { To = (i + 1) * width };
                    continue;
                }

                if (run is not null)
                {
                    yield return run;
                }

                run = new WallRun(wall, i * width, (i + 1) * width, one, other);
            }

            yield return run!;
        }
    }
}
