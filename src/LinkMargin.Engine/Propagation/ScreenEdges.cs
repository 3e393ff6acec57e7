namespace LinkMargin.Engine.Propagation;

/// <summary>
/// Where the edges of a screen lie about a straight line, each as the knife-edge parameter v of that edge alone
/// (<see cref="KnifeEdge"/>): above 0 where the line would have to move past it to be clear, below 0 where it is clear of it
/// already, +∞ where the screen goes on without end.
/// </summary>
/// <param name="Left">v of the left edge.</param>
/// <param name="Right">v of the right edge; the sum of the two is 0 or more, since the screen has a width.</param>
/// <param name="Bottom">v of the lower edge; +∞ for a thing that stands on the floor.</param>
/// <param name="Top">v of the upper edge; the sum of the two is 0 or more.</param>
public readonly record struct ScreenEdges(double Left, double Right, double Bottom, double Top)
{
    /// <summary>An upright strip without ends, such as a person or a chimney breast between floors.</summary>
    public static ScreenEdges Strip(double left, double right) =>
        new(left, right, double.PositiveInfinity, double.PositiveInfinity);

    /// <summary>A half plane with one straight edge, such as a wall's end.</summary>
    public static ScreenEdges HalfPlane(double v) => Strip(v, double.PositiveInfinity);
}
