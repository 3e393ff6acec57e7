using CsCheck;
using LinkMargin.Plots.Labels;

namespace LinkMargin.Plots.Tests.Labels;

public class LabelPlacerTests
{
    private const double Gap = 4;
    private static readonly LabelBox Frame = new(10, 20, 1210, 920);

    private static readonly Gen<LabelRequest> GenRequest = Gen.Select(
        Gen.Double[Frame.Left, Frame.Right],
        Gen.Double[Frame.Top, Frame.Bottom],
        Gen.Double[60, 260],
        (x, y, width) => new LabelRequest(x, y, 14, width, 34));

    [Fact, Law]
    public void Up_to_twelve_labels_all_stay_inside_and_clear_of_each_other_and_of_all_marks() =>
        GenRequest.List[1, 12].ForAll(requests =>
        {
            IReadOnlyList<PlacedLabel> placed = Place(requests);
            return placed.All(p => Frame.Contains(p.Box))
                && Pairs(placed).All(p => !p.First.Overlaps(p.Second))
                && placed.All(p => requests.All(r => !r.Mark.Overlaps(p.Box)));
        });

    // Twelve marks on one spot: the labels must fan out, and still find room.
    [Fact, Law]
    public void Twelve_marks_on_top_of_each_other_have_twelve_labels_apart() =>
        GenRequest.ForAll(one =>
        {
            IReadOnlyList<PlacedLabel> placed = Place([.. Enumerable.Repeat(one, 12)]);
            return placed.All(p => Frame.Contains(p.Box)) && Pairs(placed).All(p => !p.First.Overlaps(p.Second));
        });

    [Fact, Law]
    public void The_same_input_gives_the_same_places() =>
        GenRequest.List[1, 12].ForAll(requests => Place(requests).SequenceEqual(Place(requests)));

    [Fact, Law]
    public void A_lone_label_keeps_its_size_and_stands_beside_its_mark() =>
        GenRequest.ForAll(request =>
        {
            PlacedLabel placed = Assert.Single(Place([request]));
            return Math.Abs(placed.Box.Width - request.Width) < 1e-9
                && Math.Abs(placed.Box.Height - request.Height) < 1e-9
                && placed.Box.DistanceTo(request.X, request.Y) < 3 * request.Height;
        });

    [Fact]
    public void A_label_pushed_away_from_its_mark_has_a_leader()
    {
        var wall = new LabelBox(400, 300, 800, 620);
        var placer = new LabelPlacer(Frame, [wall], [], Gap);
        PlacedLabel placed = placer.Place([new LabelRequest(600, 460, 14, 120, 34)])[0];
        Assert.False(placed.Box.Overlaps(wall));
        Assert.True(placed.HasLeader);
    }

    // Between two marks, as near to one as to the other, a label says by a line whose it is.
    [Fact]
    public void A_label_that_could_be_anothers_has_a_leader()
    {
        var left = new LabelBox(10, 20, 590, 920);
        var right = new LabelBox(730, 20, 1210, 920);
        var placer = new LabelPlacer(Frame, [left, right], [], Gap);
        IReadOnlyList<PlacedLabel> placed = placer.Place([new(660, 440, 14, 100, 34), new(660, 530, 14, 100, 34)]);
        Assert.All(placed, p => Assert.False(p.Box.Overlaps(left) || p.Box.Overlaps(right)));
        Assert.All(placed.Where(p => p.Box is { Top: > 440, Bottom: < 530 }), p => Assert.True(p.HasLeader));
    }

    [Fact]
    public void A_line_through_a_box_crosses_it_and_a_line_past_it_does_not()
    {
        var box = new LabelBox(10, 10, 20, 20);
        Assert.True(box.IsCrossedBy(0, 15, 30, 15));
        Assert.True(box.IsCrossedBy(15, 15, 15, 16));
        Assert.False(box.IsCrossedBy(0, 15, 9, 15));
        Assert.False(box.IsCrossedBy(0, 5, 30, 9));
        Assert.False(box.IsCrossedBy(0, 25, 25, 25));
    }

    private static IReadOnlyList<PlacedLabel> Place(IReadOnlyList<LabelRequest> requests) =>
        new LabelPlacer(Frame, [], [], Gap).Place(requests);

    private static IEnumerable<(LabelBox First, LabelBox Second)> Pairs(IReadOnlyList<PlacedLabel> placed) =>
        from i in Enumerable.Range(0, placed.Count)
        from j in Enumerable.Range(i + 1, placed.Count - i - 1)
        select (placed[i].Box, placed[j].Box);
}
