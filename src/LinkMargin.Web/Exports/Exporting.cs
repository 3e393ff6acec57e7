using System.Text;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Problems;
using LinkMargin.Plots.Printing;
using LinkMargin.Reports.Handover;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Live;

namespace LinkMargin.Web.Exports;

/// <summary>Makes files for download: what the page shows, as the commands would write it.</summary>
/// <param name="services">Services shared by all pages.</param>
internal sealed class Exporting(PageServices services)
{
    private const string Png = "image/png", Pdf = "application/pdf", Html = "text/html; charset=utf-8";

    /// <summary>Makes a file.</summary>
    /// <param name="what"><c>map.png</c>, <c>sheet.png</c>, <c>report.pdf</c>, <c>report.html</c> or <c>house.yaml</c>.</param>
    /// <param name="spotName">The spot that is shown.</param>
    /// <param name="isMedian">Whether the median margin is shown instead of the margin to count on.</param>
    /// <param name="cancellation">Stops the work.</param>
    public Task<ExportedFile> Make(string what, string spotName, bool isMedian, CancellationToken cancellation) => Task.Run(
        () =>
        {
            HouseState state = services.Tried.Current;
            string stem = StemOf(state.Now.House.Name);
            return what switch
            {
                "house.yaml" => new ExportedFile($"{stem}.yaml", "application/yaml; charset=utf-8", new Saving(services.Tried).BytesOfNow()),
                "sheet.png" => new ExportedFile($"{stem}-sheet.png", Png, Sheet(state, isMedian, cancellation)),
                "map.png" => new ExportedFile($"{stem}-map.png", Png, Maps(state, [SpotOf(state, spotName)], isMedian, cancellation).Sheet()),
                "report.pdf" => new ExportedFile($"{stem}-report.pdf", Pdf, Report(state, spotName, state.Now.Lengths.InFeet ? PaperSize.Letter : PaperSize.A4, cancellation)),
                "report.html" => new ExportedFile($"{stem}-report.html", Html, Report(state, spotName, null, cancellation)),
                _ => throw new CannotBeDoneException($"there is no file {Quote.Of(what)} to export"),
            };
        },
        cancellation);

    private byte[] Sheet(HouseState state, bool isMedian, CancellationToken cancellation) => state.Now.House.Spots.Count == 0
        ? throw new CannotBeDoneException("the house has no spot to draw a map for")
        : Maps(state, state.Now.House.Spots, isMedian, cancellation).Sheet();

    private byte[] Report(HouseState state, string spotName, PaperSize? paper, CancellationToken cancellation)
    {
        var computation = new HandoverComputation(state.Now, services.Models.For(state.Now.House, state.Occupied), services.Confidence);
        SpotScore chosen = computation.Ranking.Scores.FirstOrDefault(score => score.Spot.Name == spotName)
            ?? throw new CannotBeDoneException($"no seat plays a console at {Quote.Of(spotName)}, so there is nothing to report; choose another spot");
        HandoverFindings findings = computation.Run(chosen, HandoverComputation.UsualCellMetres, services.Jobs.PaceOf(Jobs.Report).Reach, cancellation);
        return new HandoverReport(findings, new HandoverRequest()).Bytes(paper);
    }

    private MapPictures Maps(HouseState state, IReadOnlyList<Spot> spots, bool isMedian, CancellationToken cancellation)
    {
        House house = state.Now.House;
        LinkModel model = services.Models.For(house, state.Occupied);
        var maps = new CountedMaps(model, state.Now.Uncertainty, services.Confidence, RequiredMargin.OfMost(house));
        List<(Field Median, Field AtConfidence)> fields = [];
        foreach (Spot spot in spots)
        {
            for (int level = 0; level < house.Levels.Count; level++)
            {
                fields.Add(maps.Compute(new FieldRequest(spot, level) { Stage = FieldStage.Map }, null, cancellation));
            }
        }

        return new MapPictures(state.Now, model, fields, new MapView(spots, services.Confidence, isMedian));
    }

    private static Spot SpotOf(HouseState state, string name) => state.Now.House.Spots.FirstOrDefault(spot => spot.Name == name)
        ?? throw new CannotBeDoneException($"there is no spot {Quote.Of(name)}");

    // A file name that is valid on every system, whatever the house is called.
    private static string StemOf(string name)
    {
        var stem = new StringBuilder();
        foreach (char letter in name.ToLowerInvariant())
        {
            stem.Append(char.IsAsciiLetterOrDigit(letter) ? letter : '-');
        }

        string plain = string.Join('-', stem.ToString().Split('-', StringSplitOptions.RemoveEmptyEntries));
        return plain.Length == 0 ? "house" : plain[..Math.Min(plain.Length, 60)];
    }
}

/// <summary>A file for download.</summary>
internal sealed record ExportedFile(string Name, string Type, byte[] Bytes);
