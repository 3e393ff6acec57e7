using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths;

/// <summary>Itemises each path of a link of the full model.</summary>
internal sealed class PathItemiser(FullSpotModel model, Point3 hands, double? facingDegrees) : IPathVisitor
{
    // The mirror itself stands at the end of one leg and the start of the other: a hair short of it.
    private const double ShortOfMirror = 1e-5;

    private readonly List<PathBudget> budgets = [];

    /// <summary>The paths so far.</summary>
    internal IReadOnlyList<PathBudget> Budgets => budgets;

    private Scene Scene => model.Scene;

    private Point3 Console => model.Console;

    /// <inheritdoc/>
    public void Direct(double power, TraceBuffer buffer)
    {
        double lossDb = SpotModel.ToLossDb(power);
        Crossing[] crossings = Itemisation.Crossings(Scene, Console, hands, buffer, wholeFloors: true);
        double length = Console.DistanceTo(hands);
        double bodyDb = Console == hands ? 0 : Decibels.LossFromPowerRatio(model.Body.Factor(Console, hands, facingDegrees));
        budgets.Add(Itemised(new TracedPath(PathKind.Direct, [Console, hands], length, crossings), lossDb, 0, bodyDb, []));
    }

    /// <inheritdoc/>
    public void Diffuse(double power)
    {
        if (!(power > 0))
        {
            return;
        }

        double bodyDb = Decibels.LossFromPowerRatio(model.Body.Diffuse), lossDb = SpotModel.ToLossDb(power);
        double length = Console.DistanceTo(hands) + model.Shell.Balance.LifeMetres(model.Cells.At(hands));
        budgets.Add(new PathBudget(new TracedPath(PathKind.Diffuse, [Console, hands], length, []), 0, [], lossDb)
        {
            Bases = [],
            BodyDb = bodyDb,
            DiffuseDb = lossDb - bodyDb,
        });
    }

    /// <inheritdoc/>
    public void Upright(UprightMirror mirror, in Reflection reflection, double power, TraceBuffer buffer)
    {
        MirrorPanel panel = mirror.PanelAt(reflection.Place);
        AddReflected(
            reflection,
            power,
            panel.Material,
            mirror.IsFixture ? TurnKind.Fixture : TurnKind.Wall,
            Scene.Names[panel.Name],
            model.Cells.LevelAt(Math.Clamp(reflection.Place.Z, panel.VerticalExtent.Low, panel.VerticalExtent.High)),
            buffer);
    }

    /// <inheritdoc/>
    public void Level(LevelMirror mirror, in Reflection reflection, double power, TraceBuffer buffer) => AddReflected(
        reflection,
        power,
        mirror.Material,
        mirror.FacesUp ? TurnKind.Floor : TurnKind.Ceiling,
        Scene.House.Levels[mirror.Level].Name,
        mirror.Level,
        buffer);

    /// <inheritdoc/>
    public void Around(in DiffractedPath way, TraceBuffer buffer)
    {
        var corners = new Point3[DiffractedPaths.MostCorners];
        Array.Resize(ref corners, model.DiffractedPaths.Corners(way, hands, corners));
        var crossings = new List<Crossing>();
        double run = 0;
        for (int i = 0; i + 1 < corners.Length; i++)
        {
            crossings.AddRange(Itemisation.Crossings(Scene, corners[i], corners[i + 1], buffer, wholeFloors: true, run));
            run += corners[i].DistanceTo(corners[i + 1]);
        }

        var path = new TracedPath(PathKind.Diffracted, corners, way.Metres, crossings);
        budgets.Add(Itemised(
            path,
            SpotModel.ToLossDb(way.Power),
            0,
            Decibels.LossFromPowerRatio(way.Body),
            model.DiffractedPaths.Turns(way),
            MultipleEdges.CautionOf(corners, Scene.Band.Equivalent.WavelengthMetres),
            way.DiffractionDb));
    }

    private void AddReflected(
        in Reflection reflection, double power, int material, TurnKind kind, string name, int level, TraceBuffer buffer)
    {
        Point3 place = reflection.Place;
        var turn = new PathTurn(kind, name, level, Console.DistanceTo(place))
        {
            IncidenceDegrees = double.RadiansToDegrees(Math.Acos(reflection.CosIncidence)),
        };
        Crossing[] there = Itemisation.Crossings(
            Scene, Console, Console.Towards(place, 1 - ShortOfMirror), buffer, wholeFloors: true);
        Crossing[] on = Itemisation.Crossings(
            Scene, place.Towards(hands, ShortOfMirror), hands, buffer, wholeFloors: true, Console.DistanceTo(place));
        var path = new TracedPath(PathKind.Reflected, [Console, place, hands], reflection.LengthMetres, [.. there, .. on]);
        budgets.Add(Itemised(
            path,
            SpotModel.ToLossDb(power),
            Decibels.LossFromPowerRatio(reflection.PowerRatio),
            Decibels.LossFromPowerRatio(model.Body.Factor(reflection.Image, hands, facingDegrees)),
            [turn],
            material < 0 ? null : Said(NameOf(turn), model.Losses[material].CautionAt(reflection.CosIncidence))));
    }

    private static string NameOf(PathTurn turn) => turn.Kind switch
    {
        TurnKind.Floor => $"the floor of '{turn.Name}'",
        TurnKind.Ceiling => $"the ceiling of '{turn.Name}'",
        _ => $"'{turn.Name}'",
    };

    private static string? Said(string name, string? caution) => caution is null ? null : $"{name} is {caution}";

    private PathBudget Itemised(
        TracedPath path, double lossDb, double reflectionDb, double bodyDb, IReadOnlyList<PathTurn> turns, string? caution = null, double diffractionDb = 0)
    {
        double freeSpaceDb = FreeSpaceLoss.Db(path.LengthMetres, Scene.Band.Equivalent);
        double[] crossingsDb = [.. path.Crossings.Select(c => CrossingLoss.Db(c.Kind, c.Share, TableOf(c).LossDb(CosineOf(c))))];
        IEnumerable<string?> cautions = path.Crossings.Select(c => Said($"'{c.Name}'", TableOf(c).CautionAt(CosineOf(c)))).Append(caution)
            .Append(FreeSpaceLoss.CautionAt(path.LengthMetres, Scene.Band.Equivalent));
        return new PathBudget(path, freeSpaceDb, crossingsDb, lossDb)
        {
            EdgesDb = lossDb - freeSpaceDb - crossingsDb.Sum() - reflectionDb - diffractionDb - bodyDb,
            DiffractionDb = diffractionDb,
            ReflectionDb = reflectionDb,
            BodyDb = bodyDb,
            Turns = turns,
            Cautions = [.. cautions.OfType<string>().Distinct()],
            Bases =
            [
                .. path.Crossings.Select(c => c.Kind == ObstacleKind.Joists
                    ? LossBasis.JoistShare
                    : TableOf(c).Basis),
            ],
        };
    }

    private AngleTable TableOf(Crossing crossing) => model.Losses[Scene.NumberOf(crossing.Material)];

    // The loss of ribs belongs to a member's whole depth, whichever way it is crossed.
    private static double CosineOf(Crossing crossing) =>
        crossing.Kind == ObstacleKind.Joists ? 1 : Math.Cos(double.DegreesToRadians(crossing.IncidenceDegrees));
}
