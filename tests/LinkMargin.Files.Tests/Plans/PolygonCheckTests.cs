using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Tests.Plans;

public sealed class PolygonCheckTests
{
    [Fact]
    public void A_proper_outline_passes_without_its_closing_corner()
    {
        List<Problem> problems = [];
        Polygon? polygon = PolygonCheck.Check(
            "void 1", [new(0, 0), new(2, 0), new(2, 1), new(0, 1), new(0, 0)], new Mark(3, 7), new PlanProblems("house.yaml", problems, LengthFormat.Metric));
        Assert.Empty(problems);
        Assert.Equal(4, polygon?.Corners.Count);
    }

    [Fact]
    public void An_outline_that_crosses_itself_is_reported_with_the_place()
    {
        string fault = FaultOf((0, 0), (2, 2), (2, 0), (0, 2));
        Assert.Equal("crosses or touches itself near (1, 1); list its corners in order round the outline", fault);
    }

    [Fact]
    public void An_outline_that_goes_back_on_itself_is_reported() =>
        Assert.StartsWith(
            "crosses or touches itself", FaultOf((0, 0), (4, 0), (4, 3), (4, 5), (4, 3), (0, 3)), StringComparison.Ordinal);

    [Fact]
    public void Corners_in_one_line_enclose_nothing() =>
        Assert.StartsWith("encloses no area", FaultOf((0, 0), (1, 0), (2, 0)), StringComparison.Ordinal);

    [Theory]
    [InlineData(0.0009, false)]
    [InlineData(0.0012, true)]
    public void An_outline_is_wider_than_a_millimetre(double width, bool isRight) =>
        Assert.Equal(
            isRight, PolygonCheck.Fault([new(0, 0), new(4, 0), new(4, width), new(0, width)], LengthFormat.Metric) is null);

    [Fact]
    public void Two_corners_are_too_few() =>
        Assert.StartsWith("has 2 different corners", FaultOf((0, 0), (1, 0), (1, 0.0005)), StringComparison.Ordinal);

    [Fact]
    public void The_problem_names_the_thing_and_its_place()
    {
        List<Problem> problems = [];
        Assert.Null(PolygonCheck.Check("void 1", [new(0, 0)], new Mark(3, 7), new PlanProblems("house.yaml", problems, LengthFormat.Metric)));
        Assert.StartsWith("house.yaml:3:7: void 1 has 1 different corners", problems[0].ToString(), StringComparison.Ordinal);
        Assert.Equal(Severity.Error, problems[0].Severity);
    }

    [Theory]
    [InlineData(0.0049, 0)]
    [InlineData(0.0051, 1)]
    public void Rooms_may_overlap_by_a_hundredth_of_a_square_metre(double overlap, int mistakes)
    {
        PlanSketch sketch = new PlanSketch().Room("a", 0, 0, 4, 2).Room("b", 4 - overlap, 0, 4, 2);
        sketch.Build();
        Assert.Equal(mistakes, sketch.Problems.Count);
        Assert.All(sketch.Problems, p => Assert.StartsWith("rooms 'a' and 'b' overlap by 0.01 m²", p.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_room_inside_another_overlaps_it() =>
        Assert.StartsWith(
            "rooms 'hall' and 'core' overlap by 4 m²",
            new PlanSketch().Room("hall", 0, 0, 6, 6).Room("core", 2, 2, 2, 2).Only(Severity.Error).Message,
            StringComparison.Ordinal);

    private static string FaultOf(params (double X, double Y)[] corners) =>
        PolygonCheck.Fault(PolygonCheck.Distinct([.. corners.Select(c => new Point2(c.X, c.Y))]), LengthFormat.Metric) ?? "";
}
