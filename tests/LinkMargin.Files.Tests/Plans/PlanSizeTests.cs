using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tests.Plans;

public sealed class PlanSizeTests
{
    [Fact]
    public void A_grid_of_ten_thousand_walls_is_laid_out()
    {
        // 70 by 70 rooms have 70 × 71 × 2 walls.
        PlanSketch sketch = new();
        for (int i = 0; i < 4900; i++)
        {
            sketch.Room($"r{i}", i % 70 * 3, i / 70 * 3, 3, 3);
        }

        Assert.Equal(9940, sketch.BuildClean().Walls.Count);
    }

    [Fact]
    public void A_grid_of_ten_thousand_written_walls_finds_its_rooms()
    {
        PlanSketch sketch = new();
        foreach ((Point2 from, Point2 to) in GridWalls(70))
        {
            sketch.Wall((from.X, from.Y), (to.X, to.Y));
        }

        Plan plan = sketch.BuildClean();
        Assert.Equal((9940, 4900), (plan.Walls.Count, plan.Rooms.Count));
    }

    [Theory]
    [InlineData(PlanLimits.MostWalls, 0)]
    [InlineData(PlanLimits.MostWalls + 1, 1)]
    internal void A_level_has_at_most_twenty_thousand_walls(int walls, int mistakes)
    {
        PlanSketch sketch = new();
        for (int i = 0; i < walls; i++)
        {
            sketch.Wall(null, 1, (i, 0), (i, 0.5));
        }

        sketch.Build();
        Assert.Equal(mistakes, sketch.Problems.Count);
        Assert.All(
            sketch.Problems,
            p => Assert.StartsWith(
                "level 'den' has 20001 walls, more than the allowed 20000", p.Message, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(PlanLimits.MostCrossings, 0)]
    [InlineData(PlanLimits.MostCrossings + 1, PlanLimits.MostOfAKind + 2)]
    internal void Crossings_of_walls_are_reported_up_to_a_cap_and_then_counted(int crossings, int mistakes)
    {
        // Long walls side by side, and across them as many short ones as make the crossings.
        const int Long = 40;
        PlanSketch sketch = new();
        for (int i = 0; i < Long; i++)
        {
            sketch.Wall((i, -1), (i, 200));
        }

        for (int i = 0; i < crossings / Long; i++)
        {
            sketch.Wall((-0.5, i), (Long - 0.5, i));
        }

        for (int i = 0; i < crossings % Long; i++)
        {
            sketch.Wall((i - 0.3, 150.5), (i + 0.3, 150.5));
        }

        sketch.Build();
        string[] reported = [.. sketch.Problems.Where(p => p.Severity == Severity.Error).Select(p => p.Message)];
        Assert.Equal(mistakes, reported.Length);
        if (mistakes > 0)
        {
            Assert.Contains($"cross in {crossings} places, where at most {PlanLimits.MostCrossings} are allowed", reported[0], StringComparison.Ordinal);
            Assert.Contains(" crosses ", reported[1], StringComparison.Ordinal);
            Assert.Equal($"... and {crossings - PlanLimits.MostOfAKind} more crossings", reported[^1]);
        }
    }

    [Fact]
    public void Far_too_many_crossing_walls_are_refused_and_not_worked_through()
    {
        PlanSketch sketch = new();
        for (int i = 0; i < 2000; i++)
        {
            sketch.Wall((i, -1), (i, 2000)).Wall((-1, i), (2000, i));
        }

        Assert.Contains("more than 1000000 pairs of walls", sketch.Only(Severity.Error).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Rooms_heaped_on_one_another_are_refused_and_not_worked_through()
    {
        PlanSketch sketch = new();
        for (int i = 0; i < 3000; i++)
        {
            sketch.Room($"r{i}", 0, 0, 3, 3);
        }

        Assert.Contains("more than 1000000 pairs of rooms", sketch.Only(Severity.Error).Message, StringComparison.Ordinal);
    }

    private static IEnumerable<(Point2 From, Point2 To)> GridWalls(int cells)
    {
        for (int line = 0; line <= cells; line++)
        {
            for (int cell = 0; cell < cells; cell++)
            {
                yield return (new(cell * 3, line * 3), new((cell + 1) * 3, line * 3));
                yield return (new(line * 3, cell * 3), new(line * 3, (cell + 1) * 3));
            }
        }
    }
}
