using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Paths;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Drawing;

/// <summary>The vertical section through spot and seat for the page, with the same shapes as in the pictures.</summary>
internal static class SectionShapes
{
    /// <summary>Draws the section.</summary>
    public static SectionDrawing Of(Section section)
    {
        (Point2 least, Point2 greatest) = (section.Bounds.Least, section.Bounds.Greatest);
        var walls = section.Levels.SelectMany(level => section.Cut.Walls(level).Select(wall => (Level: level, Wall: wall))).ToArray();
        return new SectionDrawing([least.X, least.Y, greatest.X, greatest.Y], [section.From.X, section.From.Y], [section.To.X, section.To.Y])
        {
            Floors = string.Concat(section.Floors.SelectMany(floor => floor.Stretches.Select(part => Clipped(part.From, floor.BottomMetres, part.To, floor.TopMetres)))),
            Joists = string.Concat(section.Floors.SelectMany(Joists)),
            Walls = string.Concat(walls.SelectMany(one => one.Wall.Solid().Select(part =>
                Clipped(one.Wall.From, one.Level.ElevationMetres + part.From, one.Wall.To, one.Level.ElevationMetres + part.To)))),
            Leaves = string.Concat(walls.Where(one => one.Wall.Opening?.Filling is not null).Select(Leaf)),
            Fixtures = string.Concat(section.Fixtures.Select(fixture => Clipped(fixture.From, fixture.BottomMetres, fixture.To, fixture.TopMetres))),
            Names = [.. section.Levels.Select(level => new SectionName(level.Name, level.ElevationMetres + (level.HeightMetres / 2)))],
        };

        string Clipped(double fromX, double fromY, double toX, double toY)
        {
            (double from, double to) = (Math.Max(fromX, least.X), Math.Min(toX, greatest.X));
            return to > from ? ShapeText.Box(from, fromY, to, toY) : "";
        }

        string Leaf((Level Level, WallInCut Wall) one)
        {
            Opening opening = one.Wall.Opening!;
            double middle = (one.Wall.From + one.Wall.To) / 2, bottom = one.Level.ElevationMetres + opening.SillMetres;
            return middle > least.X && middle < greatest.X ? ShapeText.Line(new Point2(middle, bottom), new Point2(middle, bottom + opening.HeightMetres)) : "";
        }

        IEnumerable<string> Joists(FloorInCut floor)
        {
            if (floor.Floor.Joists is not { } lie)
            {
                return [];
            }

            // From the top down, every layer with joists.
            double top = floor.TopMetres;
            List<string> drawn = [];
            foreach (FloorLayer layer in floor.Floor.BuildUp.Layers)
            {
                double bottom = top - layer.ThicknessMetres;
                if (layer.Joists is { } members)
                {
                    drawn.AddRange(section.Cut.Joists(lie, members.WidthMetres, least.X, greatest.X)
                        .Where(joist => floor.Stretches.Any(part => joist.Middle > part.From && joist.Middle < part.To))
                        .Select(joist => ShapeText.Box(joist.Middle - joist.Half, Math.Max(bottom, floor.BottomMetres), joist.Middle + joist.Half, Math.Min(top, floor.TopMetres))));
                }

                top = bottom;
            }

            return drawn;
        }
    }
}
