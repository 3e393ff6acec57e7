using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Paths.Body;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>Paths with one reflection: by a wall, a side of a large fixture, a floor or a ceiling.</summary>
internal sealed class ReflectedPaths(TracedHouse house) : PathFinder, IPathSource
{
    // The mirror itself stands at the end of one leg and the start of the other: a hair short of it.
    private const double ShortOfMirror = 1e-5;

    private readonly ParallelWalls walls = new(house.Scene, house.Losses);

    /// <inheritdoc/>
    public PathFinder From(Point3 start) => this;

    internal override bool VariesSlowly => true;

    internal override void FindTo(in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found)
    {
        foreach (UprightMirror mirror in house.Scene.Uprights)
        {
            if (MirrorView.TryOf(mirror, ends.Start, ends.End, out MirrorView view)
                && !IsHopeless(mirror, view, ends, leastPower)
                && Mirror.InUpright(mirror, view, ends, house, buffer, out Reflection reflection)
                && Power(reflection, ends, buffer, leastPower) is double power and > 0)
            {
                found.Add(new ByUpright(house, mirror, reflection, power));
            }
        }

        foreach (LevelMirror mirror in house.Scene.Plates)
        {
            if (Mirror.InLevel(mirror, ends, house, out Reflection reflection)
                && Power(reflection, ends, buffer, leastPower) is double power and > 0)
            {
                found.Add(new ByLevel(house, mirror, reflection, power));
            }
        }
    }

    private bool IsHopeless(UprightMirror mirror, in MirrorView view, in LinkEnds ends, double leastPower)
    {
        double free = house.FreeSpaceRatio(view.LengthMetres) * BodyShadow.MostFactor;
        return free <= leastPower
            || free * walls.Most(mirror, view, ends.Start, ends.End, house.WavelengthMetres, leastPower / free) <= leastPower;
    }

    private double Power(in Reflection reflection, in LinkEnds ends, TraceBuffer buffer, double leastPower)
    {
        // No obstacle adds to a path's power, so a path that is too weak already without obstacles is too weak with them.
        double power = house.FreeSpaceRatio(reflection.LengthMetres) * reflection.PowerRatio * BodyFactor(house, reflection, ends);
        if (power <= leastPower)
        {
            return 0;
        }

        Ray there = reflection.There(ends.Start, house.WavelengthMetres), on = reflection.On(ends.End, house.WavelengthMetres);
        house.Scene.GatherFoldedLevels(there, on, reflection.Fold, buffer);
        if (FrontSum.PowerRatio(buffer.Pieces, house.Losses, leastPower / power) * power <= leastPower)
        {
            return 0; // floors alone take too much of it
        }

        house.Scene.GatherFoldedUprights(there, on, reflection.Fold, buffer);
        return Counted(power * FrontSum.PowerRatio(buffer.Pieces, house.Losses, leastPower / power), leastPower);
    }

    private static double BodyFactor(TracedHouse house, in Reflection reflection, in LinkEnds ends) =>
        ends.BodyFactor(house.Body, reflection.ImageOfEnd, reflection.Image);

    private static PathBudget Itemise(
        TracedHouse house, in Reflection reflection, double power, int material, PathTurn turn, in LinkEnds ends, TraceBuffer buffer)
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
            BodyDb = Decibels.LossFromPowerRatio(BodyFactor(house, reflection, ends)),
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
            return ReflectedPaths.Itemise(House, Reflection, Power, panel.Material, turn, ends, buffer);
        }

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) => gradients.AddFront(buffer.Pieces);
    }

    private readonly record struct ByLevel(TracedHouse House, LevelMirror Mirror, Reflection Reflection, double Power) : IFoundPath
    {
        public PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer)
        {
            PathTurn turn = TurnAt(
                Reflection,
                ends,
                Mirror.FacesUp ? TurnKind.Floor : TurnKind.Ceiling,
                House.Scene.House.Levels[Mirror.Level].Name,
                Mirror.Level);
            return ReflectedPaths.Itemise(House, Reflection, Power, Mirror.Material, turn, ends, buffer);
        }

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) => gradients.AddFront(buffer.Pieces);
    }
}
