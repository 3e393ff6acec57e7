using LinkMargin.Engine.Runs;
using LinkMargin.Files.Cables;

namespace LinkMargin.Files.Json;

/// <summary>The cable runs of spots, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Spots">Each spot.</param>
public sealed record RunsDocument(string House, IReadOnlyList<SpotRunsDocument> Spots)
{
    /// <summary>What is different from the house file; omitted where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>The plan with the runs; omitted if not requested.</summary>
    public string? Picture { get; init; }
}

/// <summary>What one spot asks for in cable, as JSON.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="NewRuns">Cables to be pulled.</param>
/// <param name="BuyM">All lengths to buy, metres, short leads with them.</param>
/// <param name="Holes">Holes to be bored.</param>
/// <param name="JoistHoles">Of them, those in joists.</param>
/// <param name="Carries">Whether its runs carry the picture: yes, borderline or no.</param>
/// <param name="IsComplete">Whether every run can be made with what is known.</param>
/// <param name="Runs">Its runs, those to be pulled in the order of pulling.</param>
/// <param name="Passages">The passages that new cables go through.</param>
/// <param name="Splitter">The splitter it needs; omitted where it needs none.</param>
public sealed record SpotRunsDocument(
    string Spot,
    int NewRuns,
    double BuyM,
    int Holes,
    int JoistHoles,
    string Carries,
    bool IsComplete,
    IReadOnlyList<RunDocument> Runs,
    IReadOnlyList<PassageFitDocument> Passages,
    SplitterDocument? Splitter)
{
    /// <summary>The lead that its radio is on; omitted where the radio is in the console.</summary>
    public RadioLeadDocument? Lead { get; init; }

    /// <summary>The runs of a spot as a document.</summary>
    public static SpotRunsDocument Of(SpotRuns runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return new(
            runs.Spot.Name, runs.NewRuns, runs.BuyMetres, runs.Holes, runs.JoistHoles, Word(runs.Carries), runs.IsComplete,
            [.. runs.Runs.Select(RunDocument.Of)],
            [.. runs.Passages.Select(PassageFitDocument.Of)],
            runs.Splitter is { } splitter ? new SplitterDocument(splitter.Name, splitter.Outputs, splitter.At.Name, splitter.IsMoved) : null)
        {
            Lead = runs.Lead is { } lead ? new RadioLeadDocument(lead.LengthMetres, double.IsFinite(lead.LaidMetres) ? lead.LaidMetres : null, lead.Kind?.Name) : null,
        };
    }

    /// <summary>The word for whether something carries.</summary>
    internal static string Word(Engine.Cables.Carries carries) => carries switch { Engine.Cables.Carries.Yes => "yes", Engine.Cables.Carries.Borderline => "borderline", _ => "no" };
}

/// <summary>What a spot or place costs in cable, beside its margins, as JSON.</summary>
/// <param name="NewRuns">Cables to be pulled.</param>
/// <param name="BuyM">All lengths to buy, metres, short leads with them.</param>
/// <param name="Holes">Holes to be bored.</param>
/// <param name="JoistHoles">Of them, those in joists.</param>
/// <param name="Carries">Whether its runs carry the picture: yes, borderline or no.</param>
/// <param name="IsComplete">Whether every run can be made with what is known.</param>
public sealed record CablesDocument(int NewRuns, double BuyM, int Holes, int JoistHoles, string Carries, bool IsComplete)
{
    /// <summary>The cost of a spot's runs as a document.</summary>
    public static CablesDocument Of(SpotRuns runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return new(runs.NewRuns, runs.BuyMetres, runs.Holes, runs.JoistHoles, SpotRunsDocument.Word(runs.Carries), runs.IsComplete);
    }
}

/// <summary>A splitter, as JSON.</summary>
/// <param name="Name">Its name; omitted where the house has none and one is to be bought.</param>
/// <param name="Outputs">How many outputs it needs.</param>
/// <param name="At">What it stands at.</param>
/// <param name="IsMoved">Whether that is another place than the house file says.</param>
public sealed record SplitterDocument(string? Name, int Outputs, string At, bool IsMoved);

/// <summary>The lead from a console to its radio, as JSON.</summary>
/// <param name="LengthM">Its length, metres.</param>
/// <param name="LaidM">What it takes along the walls, metres; omitted if no wall leads there.</param>
/// <param name="Kind">The kind of lead; omitted if none is as long.</param>
public sealed record RadioLeadDocument(double LengthM, double? LaidM, string? Kind);

/// <summary>One run, as JSON.</summary>
/// <param name="From">The end at the source.</param>
/// <param name="To">The other end.</param>
/// <param name="Means">existing, patch or new.</param>
/// <param name="Signal">The picture it carries.</param>
/// <param name="LineGbps">Bits a second on the line, Gbit/s.</param>
/// <param name="Carries">Whether cable and ends carry it: yes, borderline or no.</param>
public sealed record RunDocument(string From, string To, string Means, string Signal, double LineGbps, string Carries)
{
    /// <summary>The link rate it needs, Gbit/s; omitted if none is fast enough.</summary>
    public double? NeededGbps { get; init; }

    /// <summary>The cable that is pulled already.</summary>
    public string? Existing { get; init; }

    /// <summary>The kind of cable.</summary>
    public string? Kind { get; init; }

    /// <summary>Along its route, metres.</summary>
    public double? RouteM { get; init; }

    /// <summary>Slack at both ends, metres.</summary>
    public double? SlackM { get; init; }

    /// <summary>The length to buy, metres.</summary>
    public double? BuyM { get; init; }

    /// <summary>What is left over, metres.</summary>
    public double? CoilM { get; init; }

    /// <summary>Holes to be bored.</summary>
    public int? Holes { get; init; }

    /// <summary>Corners of its route, those in passages among them.</summary>
    public int? Corners { get; init; }

    /// <summary>The sum of these corners, degrees.</summary>
    public double? CornerDegrees { get; init; }

    /// <summary>In how many stretches it is pulled.</summary>
    public int? Stretches { get; init; }

    /// <summary>What is missing: route, kind or rate; omitted where nothing is.</summary>
    public string? Missing { get; init; }

    /// <summary>Cables between the same ends that point the wrong way.</summary>
    public IReadOnlyList<string>? WrongWay { get; init; }

    /// <summary>The legs of its route.</summary>
    public IReadOnlyList<RouteLegDocument>? Route { get; init; }

    /// <summary>A run as a document.</summary>
    internal static RunDocument Of(Run run) => new(
        run.Connection.FromName, run.Connection.ToName, Lower(run.Means.ToString()), SignalText.Of(run.Connection.Signal), Math.Round(run.Connection.Signal.LineGbps, 2),
        SpotRunsDocument.Word(run.Carries))
    {
        NeededGbps = run.NeededGbps,
        Existing = run.Existing?.Name,
        Kind = (run.Kind ?? run.Existing?.Kind)?.Name,
        RouteM = run.Route?.LengthMetres,
        SlackM = run.Means == RunMeans.Existing ? null : run.SlackMetres,
        BuyM = run.Means == RunMeans.Existing ? null : run.BuyMetres,
        CoilM = run.Means == RunMeans.Existing ? null : run.CoilMetres,
        Holes = run.Route?.Holes,
        Corners = run.Route?.Bends.Count,
        CornerDegrees = run.Route is { } bent ? Math.Round(bent.BendDegrees, 1) : null,
        Stretches = run.Route?.Stretches.Count,
        Missing = run.Gap == RunGap.None ? null : Lower(run.Gap.ToString()),
        WrongWay = run.WrongWay.Count == 0 ? null : [.. run.WrongWay.Select(cable => cable.Name)],
        Route = run.Route is { } route ? [.. route.Legs.Select(RouteLegDocument.Of)] : null,
    };

    /// <summary>A name of the program's own as a word of a document.</summary>
    internal static string Lower(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}

/// <summary>One leg of a route, as JSON.</summary>
/// <param name="Leg">What it is.</param>
/// <param name="Where">The room, wall, passage or level.</param>
/// <param name="LengthM">Its length, metres.</param>
/// <param name="Holes">Holes to be bored for it.</param>
/// <param name="FromM">Where it begins: east, north, up from the lowest floor, metres.</param>
/// <param name="ToM">Where it ends.</param>
public sealed record RouteLegDocument(string Leg, string Where, double LengthM, int Holes, IReadOnlyList<double> FromM, IReadOnlyList<double> ToM)
{
    internal static RouteLegDocument Of(RouteLeg leg) => new(
        RunDocument.Lower(leg.Kind.ToString()), leg.Where, leg.LengthMetres, leg.Holes, [leg.From.X, leg.From.Y, leg.From.Z], [leg.To.X, leg.To.Y, leg.To.Z]);
}

/// <summary>How full a passage gets, as JSON.</summary>
/// <param name="Passage">The passage.</param>
/// <param name="Cables">How many cables it then has.</param>
/// <param name="BundleM">Diameter of their bundle, metres.</param>
/// <param name="Fits">Whether they fit.</param>
/// <param name="EndsPass">Whether the ends of the new ones pass.</param>
/// <param name="MayJam">Whether three of them may jam.</param>
public sealed record PassageFitDocument(string Passage, int Cables, double BundleM, bool Fits, bool EndsPass, bool MayJam)
{
    /// <summary>Share of its cross-section that is filled, 0 to 1; omitted where nobody measured it.</summary>
    public double? FilledShare { get; init; }

    internal static PassageFitDocument Of(PassageFit fit) => new(fit.Passage.Name, fit.All.Count, fit.BundleMetres, fit.Fits, fit.Stuck.Count == 0, fit.MayJam)
    {
        FilledShare = fit.IsMeasured ? fit.FilledShare : null,
    };
}
