using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>Whether the cables of a passage fit in it, and whether the ends of new ones pass.</summary>
/// <param name="Passage">The passage.</param>
/// <param name="Added">The cables to be added, in the order they are pulled.</param>
public sealed record PassageFit(Passage Passage, IReadOnlyList<CableKind> Added)
{
    /// <summary>From this ratio of the bore to the diameter of one of three cables on, they may jam: NEC, chapter 9, table 1.</summary>
    public const double JamFrom = 2.8;

    /// <summary>Up to this ratio they may jam.</summary>
    public const double JamTo = 3.2;

    /// <summary>Most 90° corners between two places to pull from (common practice).</summary>
    public const int MostBends = 2;

    /// <summary>
    /// Greatest fill of a conduit, by the number of cables: 53 % with one, 31 % with two, 40 % with more. NEC, chapter 9, table 1;
    /// for low-voltage cable good practice, not a requirement.
    /// </summary>
    public static double MostFilled(int cables) => cables switch { <= 1 => 0.53, 2 => 0.31, _ => 0.40 };

    /// <summary>All cables in it then.</summary>
    public IReadOnlyList<CableKind> All => [.. Passage.Holds, .. Added];

    /// <summary>Whether its size is known.</summary>
    public bool IsMeasured => Passage.BoreMetres is not null || Passage.Clear is not null;

    /// <summary>Diameter of the bundle of all cables, metres.</summary>
    public double BundleMetres => Bundle.Diameter([.. All.Select(kind => kind.DiameterMetres)]);

    /// <summary>Share of its cross-section that is filled; 0 where nobody measured it.</summary>
    public double FilledShare
    {
        get
        {
            double cables = All.Sum(kind => kind.DiameterMetres * kind.DiameterMetres);
            return Passage.BoreMetres is { } bore ? cables / (bore * bore)
                : Passage.Clear is { } clear ? Math.PI / 4 * cables / (clear.WidthMetres * clear.HeightMetres)
                : 0;
        }
    }

    /// <summary>Whether three cables may jam side by side at a corner.</summary>
    public bool MayJam => All.Count == 3 && Passage.BoreMetres / All.Average(kind => kind.DiameterMetres) is >= JamFrom and <= JamTo;

    /// <summary>Whether all of them fit: the fill is allowed, and the bundle is not wider than the passage.</summary>
    public bool Fits => !IsMeasured || (FilledShare <= MostFilled(All.Count) && BundleMetres <= Narrowest);

    /// <summary>The cables whose end does not pass, however it is turned, beside those pulled before.</summary>
    public IReadOnlyList<CableKind> Stuck => [.. Added.Where((kind, i) => !Passes(kind.Plug, [.. Passage.Holds, .. Added.Take(i)]))];

    private double Narrowest => Passage.BoreMetres
        ?? (Passage.Clear is { } clear ? Math.Min(clear.WidthMetres, clear.HeightMetres) : double.PositiveInfinity);

    /// <summary>Whether an end passes a passage that has no cables in it.</summary>
    public static bool PassesEmpty(Passage passage, PlugSize plug)
    {
        ArgumentNullException.ThrowIfNull(passage);
        return new PassageFit(passage, []).Passes(plug, []);
    }

    // In a round bore the end counts as a circle as wide as its diagonal.
    private bool Passes(PlugSize plug, IReadOnlyList<CableKind> beside)
    {
        if (Passage.BoreMetres is { } bore)
        {
            return Bundle.Diameter([.. beside.Select(kind => kind.DiameterMetres), plug.DiagonalMetres]) <= bore;
        }

        if (Passage.Clear is not { } clear)
        {
            return true;
        }

        double taken = beside.Sum(kind => kind.DiameterMetres);
        (double wide, double narrow) = (Math.Max(clear.WidthMetres, clear.HeightMetres), Math.Min(clear.WidthMetres, clear.HeightMetres));
        (double longer, double shorter) = (Math.Max(plug.WidthMetres, plug.HeightMetres), Math.Min(plug.WidthMetres, plug.HeightMetres));
        return longer <= wide - taken && shorter <= narrow;
    }
}
