using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// How far out on a front edges count. A usual front ends where an edge is 25 dB below free space: farther out, other paths bring more.
/// Behind metal nothing brings more, and a front that ended there would fade to nothing within centimetres. So where all else that arrives
/// is next to nothing, a front is summed a second time with a far reach and replaces the usual one by degrees (<see cref="FarShare"/>).
/// </summary>
/// <param name="FadeFrom">From this v edges fade out, so that an edge that comes into reach causes no jump.</param>
/// <param name="End">The front ends at this v.</param>
internal readonly record struct FrontReach(double FadeFrom, double End)
{
    // Power relative to free space below which the far front begins to count, and from which it alone counts, dB. At the first an edge at the
    // end of the usual front adds 3 dB at most; at the second it is all there is.
    private const double FarFromDb = -25, FarOnlyDb = -35;

    private static readonly double FarFrom = Decibels.ToPowerRatio(FarFromDb);

    /// <summary>The reach of ordinary fronts.</summary>
    internal static FrontReach Usual { get; } = new(EdgeKernel.ApartFrom, EdgeKernel.Reach);

    /// <summary>The reach of fronts that pass next to nothing: an edge at its end is 34 dB below free space.</summary>
    internal static FrontReach Far { get; } = new(EdgeKernel.Reach, 12);

    /// <summary>Share of the far front in the place of the usual one, 0 to 1.</summary>
    /// <param name="power">All power that surely arrives.</param>
    /// <param name="clear">What the path would bring without obstacles.</param>
    internal static double FarShare(double power, double clear)
    {
        if (!(power < clear * FarFrom))
        {
            return 0;
        }

        return power > 0 ? Fade.In((Decibels.FromPowerRatio(power / clear) - FarFromDb) / (FarOnlyDb - FarFromDb)) : 1;
    }

    /// <summary>Share of the power of an edge at v ≥ 0 that is not in the front: 0 within reach, 1 beyond.</summary>
    internal double Apart(double v) => Fade.In((v - FadeFrom) / (End - FadeFrom));
}
