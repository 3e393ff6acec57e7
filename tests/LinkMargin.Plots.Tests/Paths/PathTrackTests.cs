using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Plots.Paths;

namespace LinkMargin.Plots.Tests.Paths;

public class PathTrackTests
{
    private static readonly House House = SampleHouse.Make();

    // Half way between the den's ceiling at 2.35 m and the floor over it at 2.65 m.
    private const double BetweenDenAndMiddle = 2.5;

    [Fact]
    public void A_path_is_cut_half_way_through_each_floor()
    {
        PathTrack track = PathTrack.Of(House, Of(new(1, 1, 1), new(4, 5, 4)));

        Assert.Equal([0, 1], track.Parts.Select(part => part.LevelIndex));
        double share = (BetweenDenAndMiddle - 1) / (4 - 1);
        Point2 cut = new(1 + (share * 3), 1 + (share * 4));
        Assert.Equal(0, track.Parts[0].Points[^1].Plan.DistanceTo(cut), 1e-9);
        Assert.Equal(0, track.Parts[1].Points[0].Plan.DistanceTo(cut), 1e-9);
        Assert.Equal(5, track.Parts.Sum(part => part.PlanMetres), 1e-9);
    }

    [Fact]
    public void A_path_that_comes_back_to_a_level_has_two_parts_on_it()
    {
        PathTrack track = PathTrack.Of(House, Of(new(1, 1, 2), new(3, 1, 4), new(5, 1, 2)));

        Assert.Equal([0, 1, 0], track.Parts.Select(part => part.LevelIndex));
    }

    [Fact]
    public void A_place_on_the_path_is_found_by_its_distance_from_the_spot()
    {
        PathTrack track = PathTrack.Of(House, Of(new(0, 0, 1), new(3, 0, 1), new(3, 4, 1)));

        Assert.Equal(0, track.At(5).Plan.DistanceTo(new Point2(3, 2)), 0.03);
        Assert.Equal(new Point2(0, 1), track.At(5).Direction);
    }

    [Fact]
    public void A_path_moved_aside_keeps_its_ends_and_its_corners()
    {
        PathTrack track = PathTrack.Of(House, Of(new(0, 0, 1), new(4, 0, 1), new(4, 4, 1)), asideMetres: 0.3, easeMetres: 0.5);

        Assert.Equal(0, track.Parts[0].Points[0].Plan.DistanceTo(new Point2(0, 0)), 1e-9);
        Assert.Equal(0, track.Parts[0].Points[^1].Plan.DistanceTo(new Point2(4, 4)), 1e-9);
        Assert.Equal(0, track.At(4).Plan.DistanceTo(new Point2(4, 0)), 1e-9);
        Assert.Equal(0, track.At(2).Plan.DistanceTo(new Point2(2, 0.3)), 1e-9); // to the left of a way that runs east
    }

    [Fact]
    public void A_path_straight_up_stays_in_its_place()
    {
        PathTrack track = PathTrack.Of(House, Of(new(2, 2, 1), new(2, 2, 6)), asideMetres: 0.3);

        Assert.Equal([0, 1, 2], track.Parts.Select(part => part.LevelIndex));
        Assert.All(track.Parts.SelectMany(part => part.Points), point => Assert.Equal(new Point2(2, 2), point.Plan));
    }

    [Fact]
    public void Paths_over_the_same_ground_are_drawn_side_by_side_the_strongest_in_the_middle()
    {
        PathTrack straight = PathTrack.Of(House, Of(new(0, 0, 1), new(6, 0, 1)));
        PathTrack byFloor = PathTrack.Of(House, Of(new(0, 0, 1), new(3, 0, 0), new(6, 0, 1)));
        PathTrack byCeiling = PathTrack.Of(House, Of(new(0, 0, 1), new(3, 0, 2.35), new(6, 0, 1)));
        PathTrack thereAndBack = PathTrack.Of(House, Of(new(0, 0, 1), new(-0.4, 0, 1), new(6, 0, 1)));
        PathTrack byWall = PathTrack.Of(House, Of(new(0, 0, 1), new(3, 2, 1), new(6, 0, 1)));

        Assert.Equal([0, 9, -9, 0, 18], PathBundles.AsideOf([straight, byFloor, byCeiling, byWall, thereAndBack], 0.1, 9));
    }

    [Fact]
    public void A_path_with_more_of_the_power_is_drawn_wider()
    {
        double[] widths = [.. new[] { 0.005, 0.01, 0.1, 0.5, 1 }.Select(PathPen.WidthPoints)];

        Assert.Equal(widths.Order(), widths);
        Assert.Equal(widths.Length, widths.Distinct().Count());
    }

    private static PathBudget Of(params Point3[] points) => new(
        new TracedPath(PathKind.Direct, points, points.Zip(points.Skip(1), (a, b) => a.DistanceTo(b)).Sum(), []), 60, [], 60)
    {
        Bases = [],
    };
}
