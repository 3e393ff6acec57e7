using System.Runtime.Intrinsics;

namespace LinkMargin.Engine.Wavefront;

/// <summary>Upright panels on the plan in flat arrays, eight to a group: what fills up the last group has no length.</summary>
internal sealed class PlanPanels
{
    /// <summary>How many there are in a group.</summary>
    internal const int Lanes = 8;

    internal PlanPanels(IReadOnlyList<PlanPanel> panels)
    {
        int room = (panels.Count + Lanes - 1) / Lanes * Lanes;
        (StartX, StartY, AlongX, AlongY) = (new double[room], new double[room], new double[room], new double[room]);
        (RunFrom, RunTo, EachMetre) = (new double[room], new double[room], new double[room]);
        for (int i = 0; i < panels.Count; i++)
        {
            PlanPanel panel = panels[i];
            (StartX[i], StartY[i], AlongX[i], AlongY[i]) = (panel.StartX, panel.StartY, panel.AlongX, panel.AlongY);
            (RunFrom[i], RunTo[i], EachMetre[i]) = (panel.RunFrom, panel.RunTo, 1 / Math.Sqrt(panel.SquaredMetres));
        }
    }

    /// <summary>One end of each.</summary>
    internal double[] StartX { get; }

    /// <summary>One end of each.</summary>
    internal double[] StartY { get; }

    /// <summary>From there to the other end.</summary>
    internal double[] AlongX { get; }

    /// <summary>From there to the other end.</summary>
    internal double[] AlongY { get; }

    /// <summary>Where the straight run that it is part of starts, share of the panel's length.</summary>
    internal double[] RunFrom { get; }

    /// <summary>Where that ends.</summary>
    internal double[] RunTo { get; }

    /// <summary>Share of its length that a metre of it is.</summary>
    internal double[] EachMetre { get; }

    /// <summary>One of them.</summary>
    internal PlanPanel this[int panel] =>
        new(StartX[panel], StartY[panel], AlongX[panel], AlongY[panel], RunFrom[panel], RunTo[panel]);

    /// <summary>One column of a group.</summary>
    internal static Vector512<double> Group(double[] column, int group) => Vector512.LoadUnsafe(ref column[group * Lanes]);
}
