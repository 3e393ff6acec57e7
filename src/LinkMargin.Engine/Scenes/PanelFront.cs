using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// An upright panel as a ray's wave front meets it: which stretch of the front, between which shares of the panel's length,
/// and how much of the front's height.
/// </summary>
internal readonly ref struct PanelFront
{
    private readonly ref readonly Ray ray;
    private readonly double tStart;
    private readonly double tStep;
    private readonly double leftStart;
    private readonly double leftStep;
    private readonly double nearT;

    /// <summary>Looks at a panel from one plan point to another.</summary>
    internal PanelFront(ref readonly Ray ray, double startX, double startY, double alongX, double alongY)
    {
        this.ray = ref ray;
        tStart = ray.Abreast(startX, startY);
        leftStart = ray.LeftOf(startX, startY);
        tStep = ((alongX * ray.EastX) + (alongY * ray.NorthY)) / ray.PlanMetres;
        leftStep = (ray.EastX * alongY) - (ray.NorthY * alongX);

        // Only the part abreast of the travelled ray stands in its way.
        double first = 0, last = 1;
        if (tStep != 0)
        {
            double a = (ray.Least - tStart) / tStep, b = (ray.Greatest - tStart) / tStep;
            first = Math.Max(first, Math.Min(a, b));
            last = Math.Min(last, Math.Max(a, b));
        }
        else if (tStart < ray.Least || tStart > ray.Greatest)
        {
            last = -1;
        }

        First = first;
        Last = last;
        IsMet = false;
        if (!(first < last))
        {
            return;
        }

        double vFirst = At(first), vLast = At(last);
        if (Math.Min(vFirst, vLast) > EdgeKernel.Reach || Math.Max(vFirst, vLast) < -EdgeKernel.Reach)
        {
            return;
        }

        // Heights are looked at where the panel's own line crosses the ray, or half way where it runs beside it, so that a
        // wall in two parts is one wall.
        IsMet = true;
        bool runsBeside = Math.Abs(leftStep) <= Touching.ParallelSine * double.Hypot(alongX, alongY);
        nearT = runsBeside ? (ray.Least + ray.Greatest) / 2 : TAt(-leftStart / leftStep);
    }

    /// <summary>Whether any of it stands within reach of the line.</summary>
    internal bool IsMet { get; }

    /// <summary>Where the part abreast of the ray starts, share of the panel's length.</summary>
    internal double First { get; }

    /// <summary>Where it ends.</summary>
    internal double Last { get; }

    /// <summary>v of a place on the panel, share of its length.</summary>
    internal double At(double u) => Math.Sqrt(2) * (leftStart + (u * leftStep)) / ray.RadiusAt(TAt(u));

    /// <summary>Share of the front's height, where the panel is nearest to the line, between two heights.</summary>
    internal double Cover(double lowMetres, double highMetres)
    {
        double scale = Math.Sqrt(2) * ray.CosSlope / ray.RadiusAt(nearT);
        double z = ray.HeightAt(nearT);
        return EdgeKernel.Between((lowMetres - z) * scale, (highMetres - z) * scale);
    }

    /// <summary>
    /// How far the line itself, with the narrow part of its front that a lit receiver misses, lies between two heights that
    /// are joints: 1 well inside, 1/2 on one of them, 0 well outside. Storeys one over the other add up to 1.
    /// </summary>
    internal double Within(double lowMetres, double highMetres)
    {
        double scale = Math.Sqrt(2) * ray.CosSlope / ray.RadiusAt(nearT);
        double z = ray.HeightAt(nearT);
        return Math.Max(0, Step((z - lowMetres) * scale) - Step((z - highMetres) * scale));

        static double Step(double v) => v >= 0 ? 1 - EdgeKernel.LostBeyond(v) : EdgeKernel.LostBeyond(-v);
    }

    private double TAt(double u) => Math.Clamp(tStart + (u * tStep), ray.Least, ray.Greatest);
}
