using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Scenes;

/// <summary>A fixture as a ray's wave front meets it: its silhouette if it is solid, its panels if it is hollow.</summary>
internal static class BoxFront
{
    /// <summary>Adds the upright pieces the ray's front meets: all of a solid thing, the sides of a shell.</summary>
    internal static void Gather(FixtureBox box, in Ray ray, in Fold fold, TraceBuffer buffer)
    {
        (double least, double greatest) = fold.Heights(ray.From.Z, ray.To.Z);
        if (!box.Rise.IsMetBetween(least, greatest))
        {
            return;
        }

        double along = ray.Abreast(box.Centre.X, box.Centre.Y), reach = box.RadiusMetres / ray.PlanMetres;
        double aside = Math.Abs(ray.LeftOf(box.Centre.X, box.Centre.Y)) - box.RadiusMetres;
        if (aside > 0 && ray.IsOutOfReach(aside, along - reach, along + reach))
        {
            return;
        }

        double bottom = box.Rise.BottomFor(least), top = box.Rise.TopFor(greatest);
        if (box.IsShell)
        {
            GatherPanels(box, ray, fold, buffer, bottom, top);
            return;
        }

        if (fold.Mirror >= 0 && box.HasMirror(fold.Mirror))
        {
            return; // a path thrown back by a solid thing does not run through it
        }

        if (box.Holds(ray.PointAt(ray.Start)) || box.Holds(ray.PointAt(ray.End)))
        {
            GatherFromInside(box, ray, buffer);
            return;
        }

        var piece = new Piece { Plane = box.FirstPlane, Material = box.Material, CosIncidence = 1 };
        if (Shade(box, ray, fold, out piece.Low, out piece.High, out double enter, out double leave))
        {
            piece.Share = box.BulkThickness is double thickness ? box.ChordMetres(ray) / thickness : 1;
            FrontHeights.Between(ray, enter, leave).Add(buffer, fold, piece, bottom, top);
        }
    }

    /// <summary>Adds the lid and the bottom of a shell that the leg passes through.</summary>
    internal static void GatherPlates(FixtureBox box, in Ray leg, TraceBuffer buffer)
    {
        if (box.IsShell)
        {
            GatherPlate(box, leg, buffer, box.Rise.Low, BoxSides.Bottom);
            GatherPlate(box, leg, buffer, box.Rise.High, BoxSides.Top);
        }
    }

    // Where the footprint stands on the front, and where the line enters and leaves it or comes nearest; false where that is out of
    // reach.
    private static bool Shade(
        FixtureBox box, in Ray ray, in Fold fold, out double right, out double left, out double enter, out double leave)
    {
        BoxSilhouette silhouette = BoxSilhouette.Of(box, ray, fold);
        (right, left) = (silhouette.Right, silhouette.Left);

        // An end over or under it, the image of one aside.
        bool isImage = fold.Mirror >= 0;
        enter = (!isImage || ray.Start == 0) && box.DepthOf(ray.From.Plan) >= -Touching.SlackMetres ? 0 : silhouette.Enter;
        leave = (!isImage || ray.End == 1) && box.DepthOf(ray.To.Plan) >= -Touching.SlackMetres ? 1 : silhouette.Leave;
        return left >= right && left > -EdgeKernel.Reach && right < EdgeKernel.Reach;
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
        Add(box, buffer, 0, 1, share);
    }

    private static void GatherPanels(FixtureBox box, in Ray ray, in Fold fold, TraceBuffer buffer, double bottom, double top)
    {
        for (int i = 0; i < box.Corners.Length; i++)
        {
            Point2 start = box.Corners[i], along = box.Corners[(i + 1) % box.Corners.Length] - start;
            BoxSides side = FixtureBox.PanelSides[i];
            if ((box.OpenSides & side) != 0 || (fold.Mirror >= 0 && box.MirrorOf(side) == fold.Mirror))
            {
                continue;
            }

            var front = new PanelFront(in ray, in fold, start.X, start.Y, along.X, along.Y);
            var piece = new Piece { Plane = box.FirstPlane + i, Material = box.Material, Share = 1 };
            if (front.IsMet && front.TryBetween(front.First, front.AtFirst, front.Last, front.AtLast, out piece.Low, out piece.High))
            {
                double turn = Math.Abs((ray.EastX * along.Y) - (ray.NorthY * along.X));
                piece.CosIncidence = Math.Min(1, turn * ray.CosSlope / Math.Sqrt(Point2.Dot(along, along)));
                front.Heights.Add(buffer, fold, piece, bottom, top);
            }
        }
    }

    private static void GatherPlate(FixtureBox box, in Ray leg, TraceBuffer buffer, double height, BoxSides side)
    {
        double dz = leg.To.Z - leg.From.Z;
        double t = (height - leg.From.Z) / dz;
        if ((box.OpenSides & side) != 0 || !(leg.Holds(t) && t > leg.Least && t < leg.Greatest))
        {
            return;
        }

        double shade = LevelPlate.Shade(leg, t, box.DepthOf(leg.PointAt(t).Plan));
        if (shade > 0)
        {
            Add(box, buffer, 1 - shade, Math.Abs(dz) / leg.LengthMetres, 1);
        }
    }

    // A piece that takes up all of the front but a share.
    private static void Add(FixtureBox box, TraceBuffer buffer, double beside, double cosine, double share) =>
        buffer.NextPiece() = new Piece
        {
            Low = double.NegativeInfinity,
            High = double.PositiveInfinity,
            Bottom = double.NegativeInfinity,
            Top = double.PositiveInfinity,
            Plane = Piece.NoPlane,
            Material = box.Material,
            Beside = beside,
            CosIncidence = cosine,
            Share = share,
        };
}
