using LinkMargin.Engine.Runs;
using LinkMargin.Files.Cables;

namespace LinkMargin.Files.Json;

/// <summary>The cable runs of spots, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Spots">Each spot.</param>
public sealed record RunsDocument(string House, IReadOnlyList<SpotRunsDocument> Spots)
{
    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>The plan with the runs; omitted if not requested.</summary>
    public string? Picture { get; init; }
}

/// <summary>The cable that one spot needs, as JSON.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="NewRuns">Cables to pull.</param>
/// <param name="BuyM">Total length to buy, metres, including patch leads.</param>
/// <param name="Holes">Holes to drill.</param>
/// <param name="JoistHoles">How many of the holes are in joists.</param>
/// <param name="Carries">Whether its runs carry the picture: yes, borderline or no.</param>
/// <param name="IsComplete">Whether every run can be made with what is known.</param>
/// <param name="Runs">Its runs; those to pull in the order of pulling.</param>
/// <param name="Passages">The passages that new cables go through.</param>
/// <param name="Splitter">The splitter it needs; omitted if it needs none.</param>
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
    /// <summary>The lead that its radio is on; omitted if the radio is in the console.</summary>
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

/// <summary>The cable cost of a spot or place, listed with its margins, as JSON.</summary>
/// <param name="NewRuns">Cables to pull.</param>
/// <param name="BuyM">Total length to buy, metres, including patch leads.</param>
/// <param name="Holes">Holes to drill.</param>
/// <param name="JoistHoles">How many of the holes are in joists.</param>
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
/// <param name="Name">Its name; omitted if the house has none and one must be bought.</param>
/// <param name="Outputs">How many outputs it needs.</param>
/// <param name="At">The place or fixture it is at.</param>
/// <param name="IsMoved">Whether it is at another place than in the house file.</param>
public sealed record SplitterDocument(string? Name, int Outputs, string At, bool IsMoved);

/// <summary>The lead from a console to its radio, as JSON.</summary>
/// <param name="LengthM">Its length, metres.</param>
/// <param name="LaidM">Its length when laid along the walls, metres; omitted if no wall leads there.</param>
/// <param name="Kind">The kind of lead; omitted if none is long enough.</param>
public sealed record RadioLeadDocument(double LengthM, double? LaidM, string? Kind);

/// <summary>One run, as JSON.</summary>
/// <param name="From">The end at the source.</param>
/// <param name="To">The other end.</param>
/// <param name="Means">existing, patch or new.</param>
/// <param name="Signal">The picture it carries.</param>
/// <param name="LineGbps">Bit rate on the line, Gbit/s.</param>
/// <param name="Carries">Whether cable and connected equipment carry it: yes, borderline or no.</param>
public sealed record RunDocument(string From, string To, string Means, string Signal, double LineGbps, string Carries)
{
    /// <summary>The link rate it needs, Gbit/s; omitted if none is fast enough.</summary>
    public double? NeededGbps { get; init; }

    /// <summary>The cable that is already installed.</summary>
    public string? Existing { get; init; }

    /// <summary>The kind of cable.</summary>
    public string? Kind { get; init; }

    /// <summary>Length along its route, metres.</summary>
    public double? RouteM { get; init; }

    /// <summary>Slack at both ends, metres.</summary>
    public double? SlackM { get; init; }

    /// <summary>The length to buy, metres.</summary>
    public double? BuyM { get; init; }

    /// <summary>What remains of the bought length, metres.</summary>
    public double? CoilM { get; init; }

    /// <summary>Holes to drill.</summary>
    public int? Holes { get; init; }

    /// <summary>Corners of its route, including those in passages.</summary>
    public int? Corners { get; init; }

    /// <summary>The sum of these corners, degrees.</summary>
    public double? CornerDegrees { get; init; }

    /// <summary>The number of stretches it is pulled in.</summary>
    public int? Stretches { get; init; }

    /// <summary>What is missing: route, kind or rate; omitted if nothing is.</summary>
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

    /// <summary>An enum name as a word of a document.</summary>
    internal static string Lower(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}

/// <summary>One leg of a route, as JSON.</summary>
/// <param name="Leg">What it is.</param>
/// <param name="Where">The room, wall, passage or level.</param>
/// <param name="LengthM">Its length, metres.</param>
/// <param name="Holes">Holes to drill for it.</param>
/// <param name="FromM">Its start: east, north, up from the lowest floor, metres.</param>
/// <param name="ToM">Its end.</param>
public sealed record RouteLegDocument(string Leg, string Where, double LengthM, int Holes, IReadOnlyList<double> FromM, IReadOnlyList<double> ToM)
{
    internal static RouteLegDocument Of(RouteLeg leg) => new(
        RunDocument.Lower(leg.Kind.ToString()), leg.Where, leg.LengthMetres, leg.Holes, [leg.From.X, leg.From.Y, leg.From.Z], [leg.To.X, leg.To.Y, leg.To.Z]);
}

/// <summary>How full a passage gets, as JSON.</summary>
/// <param name="Passage">The passage.</param>
/// <param name="Cables">How many cables are then in it.</param>
/// <param name="BundleM">Diameter of their bundle, metres.</param>
/// <param name="Fits">Whether they fit.</param>
/// <param name="EndsPass">Whether the plugs of the new cables fit through.</param>
/// <param name="MayJam">Whether three of the cables may jam.</param>
public sealed record PassageFitDocument(string Passage, int Cables, double BundleM, bool Fits, bool EndsPass, bool MayJam)
{
    /// <summary>Share of its cross-section that is filled, 0 to 1; omitted if its size is unknown.</summary>
    public double? FilledShare { get; init; }

    internal static PassageFitDocument Of(PassageFit fit) => new(fit.Passage.Name, fit.All.Count, fit.BundleMetres, fit.Fits, fit.Stuck.Count == 0, fit.MayJam)
    {
        FilledShare = fit.IsMeasured ? fit.FilledShare : null,
    };
}
