using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;
using Xunit.Abstractions;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// The reflections that links of small houses list against imaging in every surface (<see cref="BruteForceImages"/>). A link
/// lists those that bring enough, so there are two questions: is each listed one an image of some surface of that name, with the
/// same length, angle and place; and is each strong image in the clear listed? How strong it is told to be is for the judges of
/// the front sum and of the layers.
/// </summary>
public sealed class ReflectionsTests(ITestOutputHelper output)
{
    private const int Houses = 60;

    private const double SameMetres = 1e-9, SameDegrees = 1e-5;

    // A reflection is left out below 0.005 of the straight line and the diffuse field, and told in full from 0.01. Mirrors whose
    // place is at least so far inside lose 6 dB at their edges at most, and the player's body 7 dB: together a factor of 20.
    private const double SurelyListed = 0.01 * 20;

    private const double InsideMetres = 0.15;

    [Fact]
    public void Every_reflection_that_is_listed_is_the_image_in_a_surface_of_that_name()
    {
        int many = 0;
        foreach ((House house, LinkModel model, Spot spot, Seat seat) in Links())
        {
            (Point3 from, Point3 to) = EndsOf(model, spot, seat);
            Image[] images = [.. BruteForceImages.Of(house, from, to)];
            foreach (PathBudget budget in Reflected(model, spot, seat))
            {
                PathTurn turn = Assert.Single(budget.Turns);
                Assert.Contains(images, image => image.Kind == turn.Kind && image.Name == turn.Name && IsSame(image, budget));
                Assert.Equal(from.DistanceTo(budget.Path.Points[1]), turn.DistanceMetres, SameMetres);
                many++;
            }
        }

        output.WriteLine($"{many} reflections");
        Assert.True(many > 5 * Houses, $"{many} reflections");
    }

    [Fact]
    public void Every_strong_image_in_the_clear_is_listed_once()
    {
        int many = 0;
        foreach ((House house, LinkModel model, Spot spot, Seat seat) in Links())
        {
            (Point3 from, Point3 to) = EndsOf(model, spot, seat);
            LinkBudget link = LinkEvaluation.Budget(model, spot, seat);
            double beside = link.Paths.Where(p => p.Path.Kind is PathKind.Direct or PathKind.Diffuse).Sum(p => Decibels.ToPowerRatio(-p.LossDb));
            double wavelength = Band.Bluetooth.Equivalent.WavelengthMetres;
            PathBudget[] listed = [.. Reflected(model, spot, seat)];
            var losses = new LossTables(model.Scene.Materials, model.Scene.Band);
            foreach (Image image in BruteForceImages.Of(house, from, to))
            {
                int material = MaterialOf(model.Scene, image);
                if (material < 0 || image.ClearMetres < InsideMetres || !IsClear(house, from, image, to))
                {
                    continue;
                }

                double reflected = losses[material].Reflectance(Math.Cos(double.DegreesToRadians(image.IncidenceDegrees)));
                double power = reflected * Math.Pow(wavelength / (4 * Math.PI * image.LengthMetres), 2);
                if (power > SurelyListed * beside)
                {
                    Assert.Single(listed, budget => IsSame(image, budget));
                    many++;
                }
            }
        }

        output.WriteLine($"{many} strong images");
        Assert.True(many > Houses, $"{many} strong images");
    }

    // Where a link's paths are told to end: off the surfaces near its spot and its seat.
    private static (Point3 From, Point3 To) EndsOf(LinkModel model, Spot spot, Seat seat)
    {
        IReadOnlyList<Point3> direct = LinkEvaluation.Budget(model, spot, seat).Paths.Single(path => path.Path.Kind == PathKind.Direct).Path.Points;
        return (direct[0], direct[^1]);
    }

    // What throws it back, by the scene's number; −1 for air.
    private static int MaterialOf(Scene scene, Image image) => image.Kind is TurnKind.Floor or TurnKind.Ceiling
        ? scene.Plates.Single(p => p.FacesUp == (image.Kind == TurnKind.Floor) && scene.House.Levels[p.Level].Name == image.Name).Material
        : image.Material is Material material ? scene.NumberOf(material) : -1;

    private static bool IsSame(Image image, PathBudget budget) =>
        Math.Abs(image.LengthMetres - budget.Path.LengthMetres) < SameMetres
        && image.Place.DistanceTo(budget.Path.Points[1]) < SameMetres
        && Math.Abs(image.IncidenceDegrees - budget.Turns[0].IncidenceDegrees!.Value) < SameDegrees;

    // Whether both legs meet nothing, and would not if they ran a little to any side.
    private static bool IsClear(House house, Point3 from, Image image, Point3 to)
    {
        const double Aside = 0.2, Short = 1e-6;
        Point3 end = Towards(image.Place, from, Short), start = Towards(image.Place, to, Short);
        return IsFree(from, end) && IsFree(start, to);

        bool IsFree(Point3 one, Point3 other)
        {
            // Aside of the middle: the zone is widest there, and ends on the mirror.
            Point3 middle = Towards(one, other, 0.5);
            return new[] { (0, 0, 0), (1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1) }.All(d =>
            {
                var via = new Point3(middle.X + (Aside * d.Item1), middle.Y + (Aside * d.Item2), middle.Z + (Aside * d.Item3));
                return BruteForceLine.Crossings(house, one, via).Count == 0 && BruteForceLine.Crossings(house, via, other).Count == 0;
            });
        }

        static Point3 Towards(Point3 one, Point3 other, double share) => new(
            one.X + (share * (other.X - one.X)), one.Y + (share * (other.Y - one.Y)), one.Z + (share * (other.Z - one.Z)));
    }

    private static IEnumerable<PathBudget> Reflected(LinkModel model, Spot spot, Seat seat) =>
        LinkEvaluation.Budget(model, spot, seat).Paths.Where(path => path.Path.Kind == PathKind.Reflected);

    private static IEnumerable<(House House, LinkModel Model, Spot Spot, Seat Seat)> Links() =>
        from seed in Enumerable.Range(1000, Houses)
        let house = new RandomSmallHouse(seed).Make()
        let model = new LinkModel(house)
        from spot in house.Spots
        from seat in house.Seats
        select (house, model, spot, seat);
}
