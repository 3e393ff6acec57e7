using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Scenes;

/// <summary>A wall as a place sees it: where it starts from there and how it runs on the plan, its length, its heights, metres.</summary>
internal readonly record struct WallSeen(Point2 Start, Point2 Along, double LengthMetres, double Low, double High)
{
    /// <summary>How far away it is on the plan, metres.</summary>
    internal double DistanceMetres
    {
        get
        {
            double share = Math.Clamp(-Point2.Dot(Start, Along) / Point2.Dot(Along, Along), 0, 1);
            Point2 nearest = Start + (share * Along);
            return Math.Sqrt(Point2.Dot(nearest, nearest));
        }
    }
}
