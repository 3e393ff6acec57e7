using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Marks;

/// <summary>The labels of a plan's marks with their places.</summary>
internal sealed class MarkLabels
{
    private readonly IReadOnlyList<PlanMark> marks;
    private readonly List<(PlanMark Mark, PlacedLabel Place, string Name)> labels = [];
    private readonly PlanView view;
    private readonly double sizePoints;

    /// <summary>Finds places for the labels of some marks.</summary>
    /// <param name="view">The view.</param>
    /// <param name="marks">The marks.</param>
    /// <param name="soft">Ground that labels should not cover, pixels.</param>
    /// <param name="sizePoints">Size of letters, points.</param>
    /// <param name="hard">Ground that labels may not cover, pixels; null for none.</param>
    /// <param name="ground">Ground that labels may not cover, but that lines to them may cross, pixels; null for none.</param>
    /// <param name="key">
    /// Takes the names without a free place near their mark; null to write every name, even without a free place.
    /// </param>
    public MarkLabels(
        PlanView view,
        IReadOnlyList<PlanMark> marks,
        IEnumerable<LabelBox> soft,
        double sizePoints,
        IEnumerable<LabelBox>? hard = null,
        IEnumerable<LabelBox>? ground = null,
        NumberedKey? key = null)
    {
        (this.view, this.marks, this.sizePoints) = (view, marks, sizePoints);
        using var letters = new LabelLetters(view, sizePoints);
        double widest = WidestName(view);
        PlanMark[] named = [.. marks.Where(m => m.Name.Length > 0)];
        PlanMark[] labelled = [.. named.Select(m => m with { Name = letters.Name.Fitted(m.Name, widest) })];
        LabelBox[] bare = [.. marks.Where(m => m.Name.Length == 0).Select(m => BoxOf(view, m)), .. hard ?? []];
        LabelPlacer Placer() => new(view.Frame.Grown(-view.Points(2)), bare, soft, view.Points(2), ground);
        PlanMark Written(int i, string text) =>
            text == labelled[i].Name ? labelled[i] : labelled[i] with { Name = text, IsNumbered = true, Figure = labelled[i].IsRemark ? "" : labelled[i].Figure };
        LabelRequest RequestFor(int i, string text) => letters.RequestFor(Written(i, text));

        string[] texts = [.. labelled.Select(m => m.Name)];
        if (key is null)
        {
            LabelRequest[] requests = [.. texts.Select((text, i) => RequestFor(i, text))];
            IReadOnlyList<PlacedLabel?> free = Placer().PlaceFree(requests, mayCrossGround: _ => false);
            Crowded = [.. named.Where((m, i) => free[i] is null || m.Name != labelled[i].Name).Select(m => m.Name)];
            labels.AddRange(labelled.Zip(Placer().Place(requests), named.Select(m => m.Name)));
            return;
        }

        string[] inKey = [.. named.Select(m => m.IsRemark ? $"{m.Name}, {m.Figure}" : m.Name)];
        IReadOnlyList<(string Text, PlacedLabel Place)?> placed = key.Place(texts, RequestFor, Placer, mayCrossGround: false, inKey);
        for (int i = 0; i < labelled.Length; i++)
        {
            if (placed[i] is (string text, PlacedLabel place))
            {
                labels.Add((Written(i, text), place, named[i].Name));
            }
        }
    }

    /// <summary>The width above which a name is truncated, because it would cover the plan; pixels.</summary>
    public static double WidestName(PlanView view) =>
        Math.Min(0.6 * view.Frame.Width, Math.Max(0.4 * view.Frame.Width, view.Points(110)));

    /// <summary>The names that are truncated, or have no free place with a line to the mark that crosses no ground; empty with a key.</summary>
    public IReadOnlyList<string> Crowded { get; } = [];

    /// <summary>The names that are cut short, or whose labels cover some ground.</summary>
    /// <param name="ground">The ground, pixels.</param>
    public IEnumerable<string> CrowdedBy(IReadOnlyCollection<LabelBox> ground) =>
        labels.Where(label => label.Mark.Name != label.Name || ground.Any(label.Place.Box.Overlaps)).Select(label => label.Name);

    /// <summary>Ground taken by labels alone, pixels.</summary>
    public IEnumerable<LabelBox> Written => labels.Select(l => l.Place.Box);

    /// <summary>All ground under marks and labels, pixels.</summary>
    public IEnumerable<LabelBox> Taken => Written.Concat(marks.Select(m => BoxOf(view, m)));

    /// <summary>Ground under a mark itself, pixels.</summary>
    public static LabelBox BoxOf(PlanView view, PlanMark mark)
    {
        double reach = view.Points(MarkShape.RadiusPoints + 3);
        return LabelBox.Around(view.PixelX(mark.Place.X), view.PixelY(mark.Place.Y), reach, reach);
    }

    public void Draw(SKCanvas canvas)
    {
        using var letters = new LabelLetters(view, sizePoints);
        foreach ((PlanMark mark, PlacedLabel place, _) in labels.Where(l => l.Place.HasLeader))
        {
            letters.DrawLeader(canvas, view.Pixel(mark.Place), place.Box);
        }

        foreach (PlanMark mark in marks)
        {
            MarkShape.Draw(canvas, mark.Kind, view.Pixel(mark.Place), mark.FacingDegrees, view.PixelsPerPoint);
        }

        foreach ((PlanMark mark, PlacedLabel place, _) in labels)
        {
            letters.Draw(canvas, mark, place.Box);
        }
    }
}

/// <summary>Seats and spots with their labels, on top of everything.</summary>
internal sealed class MarkLayer(PlanView view, MarkLabels labels) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas) => labels.Draw(canvas);
}
