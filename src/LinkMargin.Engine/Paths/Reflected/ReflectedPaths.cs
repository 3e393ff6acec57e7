using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>Paths with one reflection: by a wall, a side of a large fixture, a floor or a ceiling.</summary>
internal sealed class ReflectedPaths(TracedHouse house, ClosingWalls walls) : PathFinder, IPathSource
{
    // The mirror itself is at the end of one leg and the start of the other: the legs stop a hair short of it.
    private const double ShortOfMirror = 1e-5;

    private readonly ReflectedPower reflected = new(house);

    /// <inheritdoc/>
    public PathFinder From(Point3 start) => this;

    internal override bool VariesSlowly => true;

    internal override void FindTo(in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found)
    {
        if (found.OnlyMirrors is { } some)
        {
            for (int i = 0; i < some.Length && found.Power < found.Enough; i++)
            {
                Try(some[i], ends, leastPower, buffer, ref found);
            }

            return;
        }

        int all = house.Scene.Uprights.Length + house.Scene.Plates.Count;
        for (int number = 0; number < all && found.Power < found.Enough; number++)
        {
            Try(number, ends, leastPower, buffer, ref found);
        }
    }

    // Floors and ceilings are numbered after upright mirrors.
    private void Try(int number, in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found)
    {
        int plate = number - house.Scene.Uprights.Length;
        double before = found.Power;
        if (found.IsSumOnly && buffer.IsAlong(plate < 0 ? number : SurfaceAlong.OfPlate(plate), out SurfaceAlong along))
        {
            found.Add(Counted(along.Power, leastPower) * along.Factor); // known from the straight line
        }
        else if (plate < 0)
        {
            TryUpright(house.Scene.Uprights[number], ends, leastPower, buffer, ref found);
        }
        else
        {
            LevelMirror mirror = house.Scene.Plates[plate];
            if (Mirror.InLevel(mirror, ends, house, FrontReach.Usual, out Reflection reflection)
                && Power(SurfaceAlong.OfPlate(plate), reflection, ends, buffer, leastPower) is double power and > 0)
            {
                found.Add(new ByLevel(house, mirror, plate, reflection, power));
            }
        }

        if (found.Power > before)
        {
            found.CountingMirrors?.Add(number);
        }
    }

    private void TryUpright(UprightMirror mirror, in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found)
    {
        if (MirrorView.TryOf(mirror, ends.Start, ends.End, out MirrorView view)
            && !walls.IsHopeless(mirror, view, ends, leastPower, FrontReach.Usual)
            && Mirror.InUpright(mirror, view, ends, house, FrontReach.Usual, buffer, out Reflection reflection)
            && Power(mirror.Number, reflection, ends, buffer, leastPower) is double power and > 0)
        {
            found.Add(new ByUpright(house, mirror, reflection, power));
        }
    }

    private double Power(int mirror, in Reflection reflection, in LinkEnds ends, TraceBuffer buffer, double leastPower) =>
        Counted(reflected.Of(reflection, ends, buffer, leastPower, FrontReach.Usual), leastPower) * buffer.FactorOf(mirror);

    private static PathBudget Itemise(
        TracedHouse house, int mirror, in Reflection reflection, double power, int material, PathTurn turn, in LinkEnds ends, TraceBuffer buffer)
    {
        Point3 place = reflection.Place;
        Crossing[] there = Itemisation.Crossings(
            house.Scene, ends.Start, ends.Start.Towards(place, 1 - ShortOfMirror), buffer, wholeFloors: true);
        Crossing[] on = Itemisation.Crossings(
            house.Scene, place.Towards(ends.End, ShortOfMirror), ends.End, buffer, wholeFloors: true, ends.Start.DistanceTo(place));
        var path = new TracedPath(PathKind.Reflected, [ends.Start, place, ends.End], reflection.LengthMetres, [.. there, .. on]);
        return Itemisation.Budget(house, path, PathLoss.FromPowerRatio(power), new PathItems
        {
            ReflectionDb = Decibels.LossFromPowerRatio(reflection.PowerRatio),
            SurfacesDb = Decibels.LossFromPowerRatio(buffer.FactorOf(mirror)),
            BodyDb = Decibels.LossFromPowerRatio(ReflectedPower.BodyFactor(house, reflection, ends)),
            Turns = [turn],
            Caution = material < 0 ? null : Itemisation.CautionAbout(NameOf(turn), house.Losses[material].CautionAt(reflection.CosIncidence)),
        });
    }

    private static PathTurn TurnAt(in Reflection reflection, in LinkEnds ends, TurnKind kind, string name, int level) =>
        new(kind, name, level, ends.Start.DistanceTo(reflection.Place))
        {
            IncidenceDegrees = double.RadiansToDegrees(Math.Acos(reflection.CosIncidence)),
        };

    private static string NameOf(PathTurn turn) => turn.Kind switch
    {
        TurnKind.Floor => $"the floor of '{turn.Name}'",
        TurnKind.Ceiling => $"the ceiling of '{turn.Name}'",
        _ => $"'{turn.Name}'",
    };

    private readonly record struct ByUpright(TracedHouse House, UprightMirror Mirror, Reflection Reflection, double Power) : IFoundPath
    {
        public PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer)
        {
            MirrorPanel panel = Mirror.PanelAt(Reflection.Place);
            double height = Math.Clamp(Reflection.Place.Z, panel.VerticalExtent.Low, panel.VerticalExtent.High);
            PathTurn turn = TurnAt(
                Reflection,
                ends,
                Mirror.IsFixture ? TurnKind.Fixture : TurnKind.Wall,
                House.Scene.Names[panel.Name],
                House.Scene.House.LevelIndexAt(height));
            return ReflectedPaths.Itemise(House, Mirror.Number, Reflection, Power, panel.Material, turn, ends, buffer);
        }

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) => gradients.AddFront(buffer.Pieces);
    }

    private readonly record struct ByLevel(TracedHouse House, LevelMirror Mirror, int Plate, Reflection Reflection, double Power) : IFoundPath
    {
        public PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer)
        {
            PathTurn turn = TurnAt(
                Reflection,
                ends,
                Mirror.FacesUp ? TurnKind.Floor : TurnKind.Ceiling,
                House.Scene.House.Levels[Mirror.Level].Name,
                Mirror.Level);
            return ReflectedPaths.Itemise(House, SurfaceAlong.OfPlate(Plate), Reflection, Power, Mirror.Material, turn, ends, buffer);
        }

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) => gradients.AddFront(buffer.Pieces);
    }
}
