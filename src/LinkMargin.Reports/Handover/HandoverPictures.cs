using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Charts;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Maps;
using LinkMargin.Plots.Paths;
using LinkMargin.Plots.Plans;
using LinkMargin.Plots.Runs;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>The pictures of a report, drawn for the width of its pages.</summary>
/// <param name="findings">What was computed.</param>
/// <param name="widthPoints">Room between the margins, points.</param>
internal sealed class HandoverPictures(HandoverFindings findings, double widthPoints)
{
    // How wide a plan of the paths is drawn.
    private const double ClosePlanPoints = 250;

    // Maps stand side by side in twos; more spots than this are not mapped.
    private const int MapsAcross = 2, MostMapped = 6;

    // Maps are small here, and read at arm's length: letters on them as the small print beside them.
    private const double MapLetterShare = 0.68;

    // Bars of the chart of all spots are close together, so that it still finds room below the table of alternatives.
    private const double BarLineShare = 0.68;
    private const double SheetBesidePoints = 130, SheetHeightPoints = 540, LeastPanelPoints = 90;

    /// <summary>The plan with the chosen spot and each seat.</summary>
    public PictureBlock Verdict
    {
        get
        {
            var request = new VerdictRequest(
                findings.House,
                findings.Chosen.Spot,
                [.. findings.NumberedSeats.Select(one => new VerdictSeat(one.Link.Seat, one.Number, findings.Chosen.By.Passes(one.Link)))])
            {
                Unit = findings.Loaded.PlotUnit,
            };
            return new PictureBlock(
                VerdictPicture.Vector(request, VerdictPicture.FittingSize(request, widthPoints)),
                $"Plan of {findings.House.Name} with the chosen spot and the seats that pass and do not pass",
                "Numbers are those of the table of seats. Plans are seen from above, one for each level.");
        }
    }

    /// <summary>What the weakest seat hangs on.</summary>
    public PictureBlock Assumptions
    {
        get
        {
            AssumptionsRequest request = new AssumptionsPictures(findings.Loaded, findings.Study).RequestForDecision();
            return new PictureBlock(
                AssumptionsPicture.Vector(request, AssumptionsPicture.FittingSize(request)),
                "How far the weakest seat is above its required margin if assumptions are otherwise",
                $"The weakest seat of '{findings.Ranking.Scores[0].Spot.Name}' if a floor or a wall is not as described: right of the thick line at 0 it passes, left of it it does not. A long bar is worth a look on site.");
        }
    }

    /// <summary>All spots and seats.</summary>
    public PictureBlock Spots
    {
        get
        {
            SpotsRequest request = SpotsPictures.RequestOf(findings.Loaded, findings.Ranking, findings.Uncertainty, findings.Call) with { Title = "", Caption = "", LineShare = BarLineShare };
            return new PictureBlock(
                SpotsPicture.Vector(request, SpotsPicture.FittingSize(request)),
                "Margins of all seats at all spots against what each seat requires",
                "Each bar is one seat at one spot. A seat passes if the left end of its bar reaches the line.");
        }
    }

    /// <summary>Maps of the best spots, two side by side on a page, over all levels.</summary>
    public IEnumerable<PictureBlock> Sheets
    {
        get
        {
            ColourRange range = ColourRange.Covering(findings.Fields.Select(one => one.AtConfidence), RequiredMargin.OfMost(findings.House));
            double aspect = AspectOf(findings.Fields[0].Median.Grid), rows = findings.House.Levels.Count;
            double panel = Math.Clamp(Math.Min((widthPoints - SheetBesidePoints) / MapsAcross, SheetHeightPoints / rows * aspect), LeastPanelPoints, ClosePlanPoints);
            foreach (Spot[] some in findings.Ranking.Scores.Take(MostMapped).Select(score => score.Spot).Chunk(MapsAcross))
            {
                (Field, Field)[] fields = [.. findings.Fields.Where(one => some.Any(spot => spot.Name == one.Median.Spot.Name))];
                var maps = new MapPictures(findings.Loaded, findings.Model, fields, new MapView(some, findings.Uncertainty.Confidence, ShowsMedian: false));
                SheetRequest request = maps.RequestForSheet() with { Title = "", Caption = "", Range = range, LetterShare = MapLetterShare, SeatsByNumber = findings.SeatsByNumber };
                yield return new PictureBlock(
                    MapSheet.Vector(request, MapSheet.FittingSize(request, panel)),
                    $"Maps of the margin to count on for {string.Join(" and ", some.Select(spot => spot.Name))} on all levels",
                    $"Margin to count on ({UncertaintyWords.Reached(findings.Uncertainty.Confidence)}), dB, with the hands {findings.Loaded.Lengths.Brief(findings.Fields[0].Median.HandsMetres)} above the floor. Lines join equal margins. Seats have the numbers of the table of seats.");
            }
        }
    }

    /// <summary>The new cable runs of the chosen spot on the plans of the levels they are on; null where there are none.</summary>
    public PictureBlock? Runs
    {
        get
        {
            if (findings.RunsOfChosen is not { } runs || DrawnRun.Of(runs) is not { Count: > 0 } drawn)
            {
                return null;
            }

            int[] ends = [.. runs.Runs.Where(run => run.Route is not null).SelectMany(run => new[] { run.Connection.From.LevelIndex, run.Connection.To.LevelIndex })];
            var request = new PlanRequest(findings.House, [.. Enumerable.Range(ends.Min(), ends.Max() - ends.Min() + 1)], "", "")
            {
                Unit = findings.Loaded.PlotUnit, Runs = drawn,
            };
            return new PictureBlock(
                PlanPicture.Vector(request, PlanPicture.FittingSize(request, ClosePlanPoints)),
                $"Plan of {findings.House.Name} with the new cable runs of '{runs.Spot.Name}'",
                "The new runs on the plan, numbered as in the table.");
        }
    }

    /// <summary>The paths to the weakest seat, on plan and section.</summary>
    public PictureBlock Paths
    {
        get
        {
            PathsRequest request = new PathsPictures(findings.Loaded, findings.Model).RequestFor(
                findings.Chosen.Weakest, findings.Uncertainty, findings.RunsOfChosen);
            string title = request.Title;
            request = request with { Title = "", Caption = "" };
            return new PictureBlock(PathsPicture.Vector(request, PathsPicture.FittingSize(request, ClosePlanPoints)), title, title + ".");
        }
    }

    /// <summary>The map to explore.</summary>
    public ReportSection Explore => new("explore", "Explore the map",
    [
        new ExploreBlock(new ExploreMap(
            findings.House,
            [.. findings.Fields.Select(one => one.AtConfidence)],
            MarginColour.Over(ColourRange.Covering(findings.Fields.Select(one => one.AtConfidence), RequiredMargin.OfMost(findings.House))),
            RequiredMargin.OfMost(findings.House),
            findings.Chosen.Spot,
            findings.Loaded.Lengths.InFeet)
        {
            Passes = (spot, seat) => findings.Ranking.Scores.FirstOrDefault(score => score.Spot.Name == spot.Name)?.With(seat) is { } link
                ? findings.Uncertainty.AtConfidence.Passes(link)
                : null,
        }),
    ]);

    private static double AspectOf(Grid grid) => (double)grid.Columns / grid.Rows;
}
