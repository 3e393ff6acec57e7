using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tests.Quantities;

namespace LinkMargin.Files.Tests.Plans;

/// <summary>A level being drawn for a test, and what came of laying it out.</summary>
internal sealed class PlanSketch
{
    internal const double Height = 2.4;

    internal static readonly Material Outer = new("block", 8, 2, "from memory");
    internal static readonly Material Inner = new("stud", 3, 1, "from memory");
    internal static readonly Material Brick = new("brick", 6, 2, "from memory");

    private readonly List<RoomDraft> rooms = [];
    private readonly List<WallDraft> walls = [];
    private readonly List<OpeningDraft> openings = [];
    private readonly List<Problem> problems = [];
    private int line;

    internal Material? OuterMaterial { get; init; } = Outer;

    internal Material? InnerMaterial { get; init; } = Inner;

    internal IReadOnlyList<Problem> Problems => problems;

    internal PlanSketch Room(string name, double x, double y, double width, double depth) =>
        Room(name, (x, y), (x + width, y), (x + width, y + depth), (x, y + depth));

    internal PlanSketch Room(string name, params (double X, double Y)[] corners)
    {
        rooms.Add(new RoomDraft(name, [.. corners.Select(c => new Point2(c.X, c.Y))], NextMark()));
        return this;
    }

    internal PlanSketch Wall(params (double X, double Y)[] along) => Wall(null, null, along);

    internal PlanSketch Wall(string? name, double? top, params (double X, double Y)[] along)
    {
        walls.Add(new WallDraft(name, [.. along.Select(c => new Point2(c.X, c.Y))], Brick, 0, top, NextMark()));
        return this;
    }

    internal PlanSketch Wall(WallDraft wall)
    {
        walls.Add(wall with { Mark = NextMark() });
        return this;
    }

    internal PlanSketch Door(string a, string b, double width, double? at = null, string? name = null, double height = 2) =>
        Opening(new OpeningPlace.Between(a, b), width, at, name, OpeningKind.Door, 0, height);

    internal PlanSketch Window(string room, PlanSide side, double width, double? at = null, string? name = null) =>
        Opening(new OpeningPlace.SideOf(room, side), width, at, name, OpeningKind.Window, 0.9, 1.2);

    internal PlanSketch Opening(
        OpeningPlace place,
        double width,
        double? at = null,
        string? name = null,
        OpeningKind kind = OpeningKind.Door,
        double sill = 0,
        double height = 2)
    {
        openings.Add(new OpeningDraft(name, kind, place, at, width, sill, height, null, false, NextMark()));
        return this;
    }

    /// <summary>The plan, laid out once in metres and once in feet: the messages of each hold nothing of the other.</summary>
    internal Plan Build()
    {
        PlanDraft draft = new("den", Height, OuterMaterial, InnerMaterial, rooms, walls, openings);
        List<Problem> inFeet = [];
        PlanBuilder.Build(draft, new PlanProblems("house.yaml", inFeet, new LengthFormat(LengthUnit.Foot)));
        Plan plan = PlanBuilder.Build(draft, new PlanProblems("house.yaml", problems, LengthFormat.Metric));
        Assert.Equal(problems.Count, inFeet.Count);
        Assert.All(inFeet, p => Assert.DoesNotMatch(LengthsIn.Metres, p.Message));
        Assert.All(problems, p => Assert.DoesNotMatch(LengthsIn.Feet, p.Message));
        return plan;
    }

    /// <summary>The plan of a sketch that has nothing wrong or odd.</summary>
    internal Plan BuildClean()
    {
        Plan plan = Build();
        Assert.Empty(problems);
        return plan;
    }

    /// <summary>The one problem that laying it out brings to light.</summary>
    internal Problem Only(Severity severity)
    {
        Build();
        Problem problem = Assert.Single(problems);
        Assert.Equal(severity, problem.Severity);
        return problem;
    }

    /// <summary>Walls as text, such as <c>a | b: 4,0 to 4,3 stud</c>, to the millimetre.</summary>
    internal static string[] Texts(Plan plan) => [.. plan.Walls.Select(Text)];

    internal static string Text(Wall wall)
    {
        string height = wall.TopMetres < Height
            ? string.Create(CultureInfo.InvariantCulture, $" up to {wall.TopMetres}")
            : "";
        return $"{wall.Name}: {Place(wall.Start)} to {Place(wall.End)} {wall.Material.Name}{height}";
    }

    internal static Wall WallNamed(Plan plan, string name) => Assert.Single(plan.Walls, w => w.Name == name);

    private static string Place(Point2 p) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Round(p.X, 3) + 0.0:0.###},{Math.Round(p.Y, 3) + 0.0:0.###}");

    private Mark NextMark() => new(++line, 5);
}
