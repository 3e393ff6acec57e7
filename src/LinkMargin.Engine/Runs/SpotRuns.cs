using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>What one spot needs in cable.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="Runs">Its runs, those to be pulled in the order of pulling.</param>
/// <param name="Passages">Each passage that a new cable goes through, with all cables it then has.</param>
public sealed record SpotRuns(Spot Spot, IReadOnlyList<Run> Runs, IReadOnlyList<PassageFit> Passages)
{
    /// <summary>The splitter the console needs; null for none.</summary>
    public SplitterUse? Splitter { get; init; }

    /// <summary>Displays whose processed input has no processor in the house file, so that it is fed directly.</summary>
    public IReadOnlyList<string> WithoutProcessor { get; init; } = [];

    /// <summary>The lead that the console's radio is on; null where the radio is in the console.</summary>
    public RadioLead? Lead { get; init; }

    /// <summary>Cables to be pulled.</summary>
    public int NewRuns => Runs.Count(run => run.Means == RunMeans.New);

    /// <summary>All lengths to buy, including short leads, metres.</summary>
    public double BuyMetres => Runs.Sum(run => run.BuyMetres);

    /// <summary>Holes to be bored.</summary>
    public int Holes => Runs.Sum(run => run.Route?.Holes ?? 0);

    /// <summary>Of them, those in joists.</summary>
    public int JoistHoles => Runs.Sum(run => run.Route?.JoistHoles ?? 0);

    /// <summary>The worst of its runs.</summary>
    public Carries Carries => Runs.Select(run => run.Carries).DefaultIfEmpty(Carries.Yes).Max();

    /// <summary>Whether every run can be made with what is known.</summary>
    public bool IsComplete => Runs.All(run => run.Gap == RunGap.None) && Passages.All(fit => fit.Fits && fit.Stuck.Count == 0);
}

/// <summary>The lead from a console to its radio.</summary>
/// <param name="LengthMetres">Its length, metres.</param>
/// <param name="LaidMetres">Length needed along walls and round what stands there, metres; infinite where no wall leads there.</param>
/// <param name="Kind">What to buy; null if no kind in the table works over the length.</param>
public sealed record RadioLead(double LengthMetres, double LaidMetres, CableKind? Kind);

/// <summary>A device that copies the console's one output to several inputs.</summary>
/// <param name="Name">The splitter of the house file; null for one that is to be bought.</param>
/// <param name="Outputs">How many outputs are needed.</param>
/// <param name="At">Where it stands in the plan of runs.</param>
/// <param name="IsMoved">Whether that is another place than the house file says.</param>
public sealed record SplitterUse(string? Name, int Outputs, CablePlace At, bool IsMoved)
{
    /// <summary>What one that is to be bought is called.</summary>
    public const string Unnamed = "a splitter";

    /// <summary>Splitters that pass more than this are rare, Gbit/s (common practice).</summary>
    public const double UsualGbps = PictureSignal.ClockedLinkGbps;
}
