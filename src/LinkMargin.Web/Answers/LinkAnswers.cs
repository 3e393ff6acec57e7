using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Plots.Paths;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Texts;
using LinkMargin.Web.Drawing;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Answers;

/// <summary>One link in detail: its budget in the words of <c>explain</c>, its paths, and a section.</summary>
internal static class LinkAnswers
{
    private const int TextWidth = 80;

    // Paths that coincide are drawn this far apart, so that each is visible; points of a track closer than this add nothing.
    private const double ApartMetres = 0.07;
    private const double NearMetres = 0.12;
    private const int EveryPoint = 4;

    /// <summary>Computes the details of a link.</summary>
    public static LinkAnswer Of(HouseState state, LinkModel model, double confidence, Spot spot, Seat seat)
    {
        LinkBudget budget = LinkEvaluation.Budget(model, spot, seat);
        var uncertainty = HouseUncertainty.Of(model, [spot], [seat], state.Now.Uncertainty, confidence);
        PathsRequest request = new PathsPictures(state.Now, model).RequestFor(budget, uncertainty);
        using var text = new StringWriter { NewLine = "\n" };
        new BudgetText(state.Now) { Uncertainty = uncertainty, WithAllPaths = true }.Write(budget, text, TextWidth);
        var section = new Section(request);
        return new LinkAnswer(request.Title, ObstacleSentence.Of(budget, state.Now), request.Caption, text.ToString(), PathsOf(request, section), request.NotDrawn, SectionShapes.Of(section));
    }

    private static PathItem[] PathsOf(PathsRequest request, Section section)
    {
        PathEntry[] drawn = [.. request.Paths.Where(entry => entry.Path.Path.Kind != PathKind.Diffuse)];
        double[] aside = PathBundles.AsideOf([.. drawn.Select(entry => PathTrack.Of(request.House, entry.Path))], NearMetres, ApartMetres);
        double[] asideInCut = PathBundles.AsideOf([.. drawn.Select(entry => PathTrack.Of(section.Cut, entry.Path))], NearMetres, ApartMetres);
        return [.. request.Paths.Select(Item)];

        PathItem Item(PathEntry entry)
        {
            int i = Array.IndexOf(drawn, entry);
            return new PathItem(
                entry.Number,
                KindOf(entry.Path.Path.Kind),
                PathPen.WidthPoints(entry.Share),
                entry.Words,
                entry.Length,
                entry.Loss,
                entry.ShareText,
                i < 0 ? [] : [.. PathTrack.Of(request.House, entry.Path, aside[i]).Parts.Select(part => new LevelPart(part.LevelIndex, Thinned(part.Points)))],
                i < 0 ? [] : Thinned([.. PathTrack.Of(section.Cut, entry.Path, asideInCut[i]).Parts.SelectMany(part => part.Points)]));
        }
    }

    private static double[] Thinned(IReadOnlyList<TrackPoint> points) =>
    [
        .. points.Where((point, i) => i == 0 || i == points.Count - 1 || i % EveryPoint == 0 || point.Direction != points[i - 1].Direction || point.Direction != points[i + 1].Direction)
            .SelectMany(point => new[] { Math.Round(point.Plan.X, 3), Math.Round(point.Plan.Y, 3) }),
    ];

    private static string KindOf(PathKind kind) => kind switch
    {
        PathKind.Reflected => "reflected",
        PathKind.Diffracted => "diffracted",
        PathKind.Diffuse => "diffuse",
        _ => "direct",
    };
}
