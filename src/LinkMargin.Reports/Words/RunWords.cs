using System.Globalization;
using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Files.Cables;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Reports.Words;

/// <summary>What is said of cable runs.</summary>
internal sealed class RunWords(LoadedHouse loaded)
{
    // Below a tenth of a metre there is nothing to coil up.
    private const double LeastCoilMetres = 0.1;

    private LengthFormat Lengths => loaded.Lengths;

    /// <summary>What routes rest on, and who decides about holes.</summary>
    public const string Caution = "Routes follow the walls and floors of the house file; what is hidden in them is not known. Have every hole approved under local codes by somebody licensed.";

    /// <summary>One word for whether something carries.</summary>
    public static string Word(Carries carries) => carries switch { Carries.Yes => "yes", Carries.Borderline => "borderline", _ => "no" };

    /// <summary>What a run connects.</summary>
    public static string Ends(Run run) => $"{run.Connection.FromName} -> {run.Connection.ToName}";

    /// <summary>How a run is made.</summary>
    public string Means(Run run) => run.Gap switch
    {
        RunGap.Rate => $"no link in use is fast enough for {SignalText.Of(run.Connection.Signal)}: {Gbps(run.Connection.Signal.LineGbps)} on the line; ask for less",
        RunGap.Route => $"no route found: {WhyNoRoute(run)}",
        RunGap.Kind => $"no cable in cables.yaml carries {Gbps(run.NeededGbps ?? 0)} over {Lengths.Brief(run.NeededMetres)}",
        _ => run.Means switch
        {
            RunMeans.Existing => $"existing cable '{run.Existing!.Name}' ({run.Existing.Kind.Name}{(run.Existing.LengthMetres is { } length ? $", {Lengths.Brief(length)}" : ", length not known")})",
            RunMeans.Patch => $"short lead: {run.Kind!.Name}, {AsSold(run)}",
            _ => $"new run: {run.Kind!.Name}, {AsSold(run)}",
        },
    };

    private string AsSold(Run run) => run.Kind!.Stock.FirstOrDefault(stock => stock.Metres == run.BuyMetres)?.AsSold ?? Lengths.Brief(run.BuyMetres);

    /// <summary>How the length of a new run comes about; empty for others.</summary>
    public string Length(Run run) => run.Route is not { } route || run.Kind is null ? ""
        : $"{Lengths.Brief(route.LengthMetres)} along the route + {Lengths.Brief(run.SlackMetres)} slack = {Lengths.Brief(run.NeededMetres)}"
            + (run.CoilMetres >= LeastCoilMetres ? $"; {Lengths.Brief(run.CoilMetres)} to coil, at {Lengths.Fine(5 * run.Kind.DiameterMetres)} radius or more" : "");

    /// <summary>The corners of a new run, and in how many stretches it is pulled; empty where it has none.</summary>
    public string Bends(Run run)
    {
        if (run.Route is not { Bends.Count: > 0 } route || run.Kind is null)
        {
            return "";
        }

        IReadOnlyList<PullStretch> stretches = route.Stretches;
        string all = FormattableString.Invariant($"{Plural.Of(route.Bends.Count, "bend")}, {route.BendDegrees:0}° in all, none tighter than {Lengths.Fine(run.Kind.BendRadiusMetres)} radius");
        PullStretch hardest = stretches.MaxBy(stretch => stretch.Degrees)!;
        string force = string.Create(CultureInfo.InvariantCulture, $"{(stretches.Count > 1 ? "in the hardest stretch, " : "")}friction at the bends multiplies the pull by about {hardest.ForceTimes:0}")
            + (run.Kind.PullNewtons is { } most ? string.Create(CultureInfo.InvariantCulture, $", so feed the cable in by hand, with a drag below {most / hardest.ForceTimes:0} N") : "");
        string over = hardest.Degrees > Route.MostDegrees + 1
            ? FormattableString.Invariant($"; {hardest.Degrees:0}° lie where no hand gets between them: open the floor there, or lay it before the ceiling is closed") : "";
        return stretches.Count == 1
            ? $"{all}: pulled in one stretch; {force}{over}"
            : FormattableString.Invariant($"{all}: pull it in {stretches.Count} stretches (at most {Route.MostDegrees:0}° each, common practice), with a loop drawn out {string.Join(" and ", stretches.Skip(1).Select(stretch => RouteWords.Corner(stretch.From!)))}; {force}{over}");
    }

    /// <summary>Whether a run carries its picture, with the sum where that is close or fails.</summary>
    public static string Carrying(Run run)
    {
        string sum = $"{SignalText.Of(run.Connection.Signal)}, {Gbps(run.Connection.Signal.LineGbps)} on the line";
        RateLimit[] rated = [new("the cable", run.CableGbps), .. run.Connection.Limits.Where(limit => limit.Gbps is not null).Select(limit => limit with { Name = $"'{limit.Name}'" })];
        List<string> said = [];
        foreach (IGrouping<(Carries By, double? Gbps), string> alike in rated.Where(limit => limit.Gbps is not null).GroupBy(limit => (run.By(limit), limit.Gbps), limit => limit.Name))
        {
            string names = string.Join(" and ", alike.Distinct());
            said.Add(alike.Key.By switch
            {
                Carries.Yes => $"{names}: {Gbps(alike.Key.Gbps!.Value)}, enough",
                Carries.Borderline => $"{names}: {Gbps(alike.Key.Gbps!.Value)}, just below this sum, so borderline; it usually works, since blanking is sent packed: test it first",
                _ => $"{names}: {Gbps(alike.Key.Gbps!.Value)}, too slow",
            });
        }

        if (run.ByCable == Carries.Borderline)
        {
            said.Add(run.Existing is { LengthMetres: null } ? "the cable's length is not known: test it with this picture" : run.Existing is not null ? "this length may carry it but is not sure to: test it" : "this length may carry it but is not sure to: test it before you pull it");
        }

        return $"{sum}. {string.Join(". ", said.Select(words => char.ToUpperInvariant(words[0]) + words[1..]))}.";
    }

    /// <summary>What is said of cables that run the wrong way, or are too slow.</summary>
    public IEnumerable<string> Unused(Run run)
    {
        foreach (PulledCable cable in run.WrongWay)
        {
            yield return $"'{cable.Name}' goes from '{cable.From.Name}' to '{cable.To.Name}' and is directional"
                + (run.Means == RunMeans.Existing ? "; another cable serves here" : "; a run back is needed");
        }

        foreach (PulledCable cable in run.TooSlow)
        {
            string why = run.NeededGbps is { } rate && cable.Kind.ReachAt(rate) is { } reach
                ? $"{cable.Kind.Name} reaches {Lengths.Brief(reach.MostMetres)} at most at {Gbps(rate)}, and this one is {Lengths.Brief(cable.LengthMetres ?? 0)}"
                : $"no length of {cable.Kind.Name} does";
            yield return $"'{cable.Name}' does not carry {SignalText.Of(run.Connection.Signal)}: {why}";
        }
    }

    /// <summary>How full a passage gets.</summary>
    public string Fit(PassageFit fit)
    {
        if (!fit.IsMeasured)
        {
            return $"'{fit.Passage.Name}': no size is given; measure it";
        }

        string filled = string.Create(CultureInfo.InvariantCulture, $"{100 * fit.FilledShare:0} % filled of {100 * PassageFit.MostFilled(fit.All.Count):0} %");
        string all = string.Create(CultureInfo.InvariantCulture, $"'{fit.Passage.Name}': {Plural.Of(fit.All.Count, "cable")}, bundle {Lengths.Fine(Math.Ceiling(1000 * fit.BundleMetres) / 1000)}, {filled}");
        string size = fit.Passage.BoreMetres is { } bore ? $" of bore {Lengths.Fine(bore)}" : "";
        return all + size + (fit.Fits ? ": fits" : ": does not fit")
            + (fit.Stuck.Count > 0 ? $"; the end of {string.Join(", ", fit.Stuck.Select(kind => kind.Name).Distinct())} ({Lengths.Fine(fit.Stuck[0].Plug.WidthMetres)} x {Lengths.Fine(fit.Stuck[0].Plug.HeightMetres)}) does not pass beside them" : "")
            + (fit.MayJam ? "; three cables may jam in it: pull them together, with lubricant" : "")
            + (fit.Passage.Bends > PassageFit.MostBends ? FormattableString.Invariant($"; {fit.Passage.Bends} bends in it: more than {PassageFit.MostBends} take a place to pull from in between") : "");
    }

    /// <summary>What is said of the lead that the radio is on.</summary>
    public string Lead(RadioLead lead) =>
        $"The radio is on a lead of {Lengths.Brief(lead.LengthMetres)}: {(lead.Kind is { } kind ? $"{kind.Name}, {kind.Description}" : "no lead in cables.yaml is as long")}."
            + (double.IsInfinity(lead.LaidMetres) ? " No wall leads there to lay it along."
                : lead.LaidMetres > lead.LengthMetres ? $" Along the walls and round what stands there it takes {Lengths.Brief(lead.LaidMetres)}: too short." : $" Along the walls it takes {Lengths.Brief(lead.LaidMetres)}.");

    /// <summary>What is said of a splitter.</summary>
    public static string Splitter(SplitterUse splitter) =>
        (splitter.Name is { } name
            ? $"The console has one output: '{name}' copies it to {splitter.Outputs} inputs{(splitter.IsMoved ? $", moved to '{splitter.At.Name}', which saves a run" : "")}."
            : FormattableString.Invariant($"The console has one output: a splitter with {splitter.Outputs} outputs is needed, at '{splitter.At.Name}'; the house file describes none."))
        + $" A splitter tells the console only what the less capable display can show, may refuse copy-protected pictures, and rarely passes more than {Gbps(SplitterUse.UsualGbps)}: check its data sheet.";

    /// <summary>A rate with its unit.</summary>
    public static string Gbps(double gbps) => string.Create(CultureInfo.InvariantCulture, $"{gbps:0.##} Gbit/s");

    private string WhyNoRoute(Run run)
    {
        CablePlace[] ends = [run.Connection.From, run.Connection.To];
        if (ends.FirstOrDefault(end => LevelOf(end).Rooms.Count == 0) is { } bare)
        {
            return $"the level '{LevelOf(bare).Name}' has no rooms, so no walls to follow; describe its rooms";
        }

        if (ends.FirstOrDefault(end => !LevelOf(end).Rooms.Any(room => room.Outline.Contains(end.Plan))) is { } outside)
        {
            return $"'{outside.Name}' is in no room of the level '{LevelOf(outside).Name}', so no wall leads there; describe its room";
        }

        return run.Connection.From.LevelIndex == run.Connection.To.LevelIndex
            ? "no wall joins the rooms on the way; describe a passage under 'passages'"
            : "no wall stands over another on the way, and no floor has joists to go between; describe the 'joists' under 'above', or a passage under 'passages'";
    }

    private Level LevelOf(CablePlace place) => loaded.House.Levels[place.LevelIndex];
}
