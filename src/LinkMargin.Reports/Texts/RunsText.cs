using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Files.Json;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>The runs of every spot in a table, or the pull sheet of one.</summary>
internal sealed class RunsText(LoadedHouse loaded)
{
    private readonly RunWords words = new(loaded);
    private readonly RouteWords routes = new(loaded);

    /// <summary>A table of all spots.</summary>
    public void WriteOverview(IReadOnlyList<SpotRuns> spots, TextWriter output, int width)
    {
        WordWrap.Write($"{loaded.House.Name}: cable runs that each spot needs.", output, width);
        output.WriteLine();
        CableTable.Write(spots.Select(spot => (spot.Spot.Name, CablesDocument.Of(spot))), "spot", loaded.Lengths, output, width);
        output.WriteLine();
        WordWrap.Write(
            "new runs: cables to pull; to buy: in the lengths they are sold in, short leads with them; can be pulled: every run has a route, a cable and room in its passages, whether it carries the picture or not. "
                + "'linkmargin runs HOUSE --spot SPOT' prints the pull sheet.", output, width);
        WordWrap.Write(RunWords.Caution, output, width);
    }

    /// <summary>The pull sheet of one spot.</summary>
    public void WriteSheet(SpotRuns runs, TextWriter output, int width)
    {
        Level level = loaded.House.Levels[runs.Spot.LevelIndex];
        WordWrap.Write($"{loaded.House.Name}, console at '{runs.Spot.Name}' ({level.Name}): {SpotCableWords.Cost(runs, loaded.Lengths)}.", output, width);
        if (SpotCableWords.Shortcomings(runs) is { Length: > 0 } lacking)
        {
            WordWrap.Write(lacking, output, width);
        }

        if (runs.Lead is { } lead)
        {
            WordWrap.Write(words.Lead(lead), output, width);
        }

        if (runs.Runs.Count == 0)
        {
            WordWrap.Write("No seat that plays here faces a display of the house file, so the console needs no video cable.", output, width);
            return;
        }

        if (runs.Splitter is { } splitter)
        {
            WordWrap.Write(RunWords.Splitter(splitter), output, width);
        }

        foreach (string display in runs.WithoutProcessor)
        {
            WordWrap.Write($"No processor is described for '{display}'; its processed input is fed straight from the console.", output, width);
        }

        foreach ((Run run, int i) in runs.Runs.Select((run, i) => (run, i)))
        {
            output.WriteLine();
            WordWrap.WriteHanging($"{RunWords.Ends(run)}: {words.Means(run)}", output, width, FormattableString.Invariant($"R{i + 1}  "), "    ");
            foreach (string line in new[] { run.Gap == RunGap.Rate ? "" : RunWords.Carrying(run), words.Length(run), words.Bends(run) }.Concat(words.Unused(run)).Where(line => line.Length > 0))
            {
                WordWrap.WriteHanging(line, output, width, "    ", "      ");
            }

            int same = run.Route is { } route ? runs.Runs.Take(i).ToList().FindIndex(other => other.Route is { } before && before.Legs.SequenceEqual(route.Legs)) : -1;
            if (same >= 0)
            {
                WordWrap.WriteHanging(FormattableString.Invariant($"the same route as R{same + 1}"), output, width, "    - ", "      ");
                continue;
            }

            foreach (string leg in run.Route is { } laid ? routes.Legs(laid) : [])
            {
                WordWrap.WriteHanging(leg, output, width, "    - ", "      ");
            }
        }

        if (runs.Holes > 0)
        {
            output.WriteLine();
            WordWrap.Write($"{PlaceWords.Note(loaded.Lengths)}, as on the plan.", output, width);
        }

        if (runs.Passages.Count > 0)
        {
            output.WriteLine();
            WordWrap.Write("Passages", output, width);
            foreach (PassageFit fit in runs.Passages)
            {
                WordWrap.WriteHanging(words.Fit(fit), output, width, "   ", "     ");
            }
        }

        output.WriteLine();
        foreach (string line in Steps(runs))
        {
            WordWrap.WriteHanging(line, output, width, "* ", "  ");
        }
    }

    // NEC 300.4: 1 1/4 in.
    private const double StudFaceMetres = 1.25 * 0.0254;

    // Common practice: 4 ft.
    private const double SupportMetres = 4 * 0.3048;

    private IEnumerable<string> Steps(SpotRuns runs)
    {
        if (runs.NewRuns > 0)
        {
            yield return "Pull in the order above: the largest plugs first, while there is room. The arrow on a directional cable points to the display.";
            yield return "Before pulling: lay each cable on the floor and test it with the picture it must carry. Label both ends with their names above. Cap the ends.";
            yield return "Pull by the jacket, never by the plug"
                + (runs.Runs.Where(run => run.Means == RunMeans.New && run.Kind?.PullNewtons is not null).Select(run => run.Kind!.PullNewtons!.Value).DefaultIfEmpty(0).Min() is var force and > 0
                    ? string.Create(CultureInfo.InvariantCulture, $", with at most {force:0} N") : "")
                + (runs.Runs.Where(run => run.Means == RunMeans.New && run.Kind is not null).Select(run => run.Kind!.BendRadiusMetres).DefaultIfEmpty(0).Max() is var bend and > 0
                    ? $"; no bend tighter than {loaded.Lengths.Fine(bend)} radius" : "")
                + ". Leave a pull string behind. Test again before anything is closed.";
        }

        if (runs.JoistHoles > 0)
        {
            foreach (string line in JoistLines(runs))
            {
                yield return line;
            }
        }

        if (runs.Holes > 0)
        {
            yield return "Before you bore: find mains cables and pipes, and switch off the circuits near the hole. Studs, plates, fire stops and fire-rated walls have rules of their own; seal openings around cables in floors with an approved material.";
        }

        if (runs.NewRuns > 0)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"Keep copper cables apart from mains: 200 mm unless divided (EN 50174-2), crossing at right angles; optical cables need no distance. Fit a steel plate where a cable is less than {loaded.Lengths.Fine(StudFaceMetres)} from the face of a stud (NEC 300.4). Support cable every {loaded.Lengths.Brief(SupportMetres)}. Secure ladders; in a roof space stand on joists or boards only.");
            yield return "In floors, shafts and ceilings that carry air the jacket needs a rating (in the US: plenum, riser or general; a higher rating may replace a lower one). Seal cables through fire-rated walls and floors with a listed firestop system.";
        }

        yield return RunWords.Caution;
    }

    private IEnumerable<string> JoistLines(SpotRuns runs)
    {
        foreach (string name in runs.Runs.SelectMany(run => run.Route?.Legs ?? []).Where(leg => leg.JoistHoles > 0).Select(leg => leg.Where).Distinct())
        {
            FloorBuildUp buildUp = loaded.House.Levels.First(level => level.Name == name).Above!.BuildUp;
            double depth = buildUp.Layers.Select(layer => layer.Joists?.DepthMetres ?? 0).Max(), hole = JoistHole.GreatestMetres(depth);
            double plug = runs.Runs.Where(run => run.Kind is not null).Max(run => run.Kind!.Plug.DiagonalMetres);
            yield return $"Joists above '{name}' ({loaded.Lengths.Fine(depth)} deep): for sawn timber the rule's figure is a hole of at most {loaded.Lengths.Fine(Math.Floor(1000 * hole) / 1000)}, {loaded.Lengths.Fine(JoistHole.EdgeMetres)} from top and bottom (IRC R502.8.1); the largest end takes {loaded.Lengths.Fine(Math.Ceiling(1000 * plug) / 1000)}. I-joists, laminated beams and trusses only by their maker's chart. Ask before you bore.";
        }
    }
}
