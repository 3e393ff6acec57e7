using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Scenes;

/// <summary>A fixture as a ray's wave front meets it: its silhouette if it is solid, its panels if it is hollow.</summary>
internal static class BoxFront
{
    /// <summary>Adds the pieces the ray's front meets.</summary>
    internal static void Gather(FixtureBox box, in Ray ray, TraceBuffer buffer, int exceptMirror = -1)
    {
        if (box.IsShell)
        {
            GatherPanels(box, ray, buffer, exceptMirror);
            GatherPlate(box, ray, buffer, box.Low, BoxSides.Bottom);
            GatherPlate(box, ray, buffer, box.High, BoxSides.Top);
            return;
        }

        if (exceptMirror >= 0 && box.HasMirror(exceptMirror))
        {
            return; // a path thrown back by a solid thing does not run through it
        }

        if (box.Holds(ray.PointAt(ray.Start)) || box.Holds(ray.PointAt(ray.End)))
        {
            GatherFromInside(box, ray, buffer);
            return;
        }

        if (!Shade(box, ray, out double right, out double left, out double t))
        {
            return;
        }

        double scale = Math.Sqrt(2) * ray.CosSlope / ray.RadiusAt(t);
        double z = ray.HeightAt(t);
        double cover = EdgeKernel.Between((box.Low - z) * scale, (box.High - z) * scale);
        Add(box, buffer, right, left, cover, 1, box.BulkThickness is double thickness ? box.ChordMetres(ray) / thickness : 1);
    }

    // The stretch of the front, in v, in which the part of the footprint abreast of the ray stands, and where along the ray
    // it is met: at the middle of what the line crosses, or where it comes nearest.
    private static bool Shade(FixtureBox box, in Ray ray, out double right, out double left, out double t)
    {
        right = double.PositiveInfinity;
        left = double.NegativeInfinity;
        t = 0;
        double nearest = double.PositiveInfinity, crossed = 0;
        int crossings = 0;
        double previousT = ray.Abreast(box.Corners[^1].X, box.Corners[^1].Y), previousLeft = ray.LeftOf(box.Corners[^1].X, box.Corners[^1].Y);
        foreach (Point2 corner in box.Corners)
        {
            double nextT = ray.Abreast(corner.X, corner.Y), nextLeft = ray.LeftOf(corner.X, corner.Y);
            double stepT = nextT - previousT, stepLeft = nextLeft - previousLeft;
            double first = 0, last = 1;
            if (stepT != 0)
            {
                double a = (ray.Least - previousT) / stepT, b = (ray.Greatest - previousT) / stepT;
                first = Math.Max(0, Math.Min(a, b));
                last = Math.Min(1, Math.Max(a, b));
            }
            else if (previousT < ray.Least || previousT > ray.Greatest)
            {
                last = -1;
            }

            if (first <= last)
            {
                Look(ray, previousT + (first * stepT), previousLeft + (first * stepLeft), ref right, ref left, ref nearest, ref t);
                Look(ray, previousT + (last * stepT), previousLeft + (last * stepLeft), ref right, ref left, ref nearest, ref t);
                double zero = stepLeft != 0 ? -previousLeft / stepLeft : -1;
                if (zero >= first && zero <= last)
                {
                    crossed += previousT + (zero * stepT);
                    crossings++;
                }
            }

            previousT = nextT;
            previousLeft = nextLeft;
        }

        if (crossings > 0)
        {
            t = Math.Clamp(crossed / crossings, ray.Least, ray.Greatest);
        }

        return left >= right;
    }

    private static void Look(
        in Ray ray, double at, double aside, ref double right, ref double left, ref double nearest, ref double t)
    {
        at = Math.Clamp(at, ray.Least, ray.Greatest);
        double v = Math.Sqrt(2) * aside / ray.RadiusAt(at);
        right = Math.Min(right, v);
        left = Math.Max(left, v);
        if (Math.Abs(v) < nearest)
        {
            nearest = Math.Abs(v);
            t = at;
        }
    }

    private static void GatherFromInside(FixtureBox box, in Ray ray, TraceBuffer buffer)
    {
        Point3 from = ray.PointAt(ray.Start), to = ray.PointAt(ray.End);
        if (!box.Pierce(from, to, out BoxPassage passage))
        {
            return;
        }

        double inside = (Math.Min(passage.Leave, 1) - Math.Max(passage.Enter, 0)) * from.DistanceTo(to);
        double share = box.BulkThickness is double thickness ? inside / thickness : 1;
        Add(box, buffer, double.NegativeInfinity, double.PositiveInfinity, 1, 1, share);
    }

    private static void GatherPanels(FixtureBox box, in Ray ray, TraceBuffer buffer, int exceptMirror)
    {
        for (int i = 0; i < box.Corners.Length; i++)
        {
            Point2 start = box.Corners[i], along = box.Corners[(i + 1) % box.Corners.Length] - start;
            if ((box.OpenSides & FixtureBox.PanelSides[i]) != 0 || (exceptMirror >= 0 && box.MirrorOf(FixtureBox.PanelSides[i]) == exceptMirror))
            {
                continue;
            }

            var front = new PanelFront(in ray, start.X, start.Y, along.X, along.Y);
            if (!front.IsMet)
            {
                continue;
            }

            double vFirst = front.At(front.First), vLast = front.At(front.Last);
            double turn = Math.Abs((ray.EastX * along.Y) - (ray.NorthY * along.X));
            double cosine = Math.Min(1, turn * ray.CosSlope / Math.Sqrt(Point2.Dot(along, along)));
            Add(box, buffer, Math.Min(vFirst, vLast), Math.Max(vFirst, vLast), front.Cover(box.Low, box.High), cosine, 1);
        }
    }

    private static void GatherPlate(FixtureBox box, in Ray ray, TraceBuffer buffer, double height, BoxSides side)
    {
        double dz = ray.To.Z - ray.From.Z;
        double t = (height - ray.From.Z) / dz;
        if ((box.OpenSides & side) != 0 || !(t > ray.Least && t < ray.Greatest))
        {
            return;
        }

        double share = LevelPlate.Shade(ray, t, box.DepthOf(ray.PointAt(t).Plan));
        Add(box, buffer, double.NegativeInfinity, double.PositiveInfinity, share, Math.Abs(dz) / ray.LengthMetres, 1);
    }

    private static void Add(FixtureBox box, TraceBuffer buffer, double vLow, double vHigh, double cover, double cosine, double share)
    {
        if (cover < Piece.LeastCover || vLow > EdgeKernel.Reach || vHigh < -EdgeKernel.Reach)
        {
            return;
        }

        ref Piece piece = ref buffer.NextPiece();
        piece.Low = vLow;
        piece.High = vHigh;
        piece.Back = -1;
        piece.Front = box.Material;
        piece.Cover = cover;
        piece.Hold = 1;
        piece.CosIncidence = cosine;
        piece.Share = share;
        piece.IsRibs = false;
    }
}
