using System.Globalization;
using System.Numerics;
using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Reports.Words;

/// <summary>A remedy, its effort and its cautions, in words.</summary>
/// <param name="loaded">The house.</param>
internal sealed class RemedyWords(LoadedHouse loaded)
{
    private const string ThroughTheHouse =
        "Cable through walls or floors: local codes and licensed people decide about the jacket and the sealing of holes. Never cut or drill a joist before somebody qualified has checked it.";

    /// <summary>What is done, in a phrase.</summary>
    public string What(Remedy remedy) => remedy.Kind switch
    {
        RemedyKind.Lead => $"receiver on a {Length(remedy)} lead, {RestOf(remedy)}",
        RemedyKind.OpenSide => $"{Side(remedy)} of '{remedy.Thing}' left open",
        RemedyKind.SwapSide => $"{Side(remedy)} of '{remedy.Thing}' of {remedy.Material}",
        RemedyKind.Raise => remedy.Thing.Length > 0
            ? $"console on top of '{remedy.Thing}'"
            : $"console {loaded.Lengths.Brief(Moved(remedy).HeightMetres)} above the floor in its place",
        RemedyKind.Shelf => $"console in zone '{remedy.Thing}'{(remedy.CrossesStructure ? $" on level '{loaded.House.Levels[remedy.LevelIndex!.Value].Name}'" : "")}, {Place(Moved(remedy))}",
        RemedyKind.TurnSeat => $"'{remedy.Thing}' turned by {Turn(remedy)}",
        RemedyKind.MoveSeat => $"'{remedy.Thing}' moved {Step(remedy)}, to {At(((MoveSeat)remedy.Edits[0]).Plan)}",
        RemedyKind.OpenDoor => $"{DoorOf(remedy)} left open",
        RemedyKind.Controller => loaded.Tables.Radios.TryGetValue(remedy.Thing, out Radio? row) && row.Description.Length > 0
            ? $"other controllers: {row.Description} ({remedy.Thing})"
            : $"other controllers: {remedy.Thing}",
        RemedyKind.Wire => $"controller on a {Length(remedy)} cable at '{remedy.Thing}'{RouteOf(remedy)}",
        _ => throw new ArgumentOutOfRangeException(nameof(remedy), remedy.Kind, "Not a known kind of remedy."),
    };

    /// <summary>What an alternative does otherwise.</summary>
    public string Otherwise(Remedy remedy) => remedy.Kind switch
    {
        RemedyKind.Lead => $"{Length(remedy)}, {RestOf(remedy)}",
        RemedyKind.OpenSide => Side(remedy),
        RemedyKind.SwapSide => $"{Side(remedy)} of {remedy.Material}",
        RemedyKind.Controller => remedy.Thing,
        _ => What(remedy),
    };

    /// <summary>The effort, in a word or two.</summary>
    public static string EffortOf(Effort effort) => effort switch
    {
        Effort.Free => "none",
        Effort.Small => "move it",
        Effort.Buy => "buy",
        Effort.Cable => "run a cable",
        _ => throw new ArgumentOutOfRangeException(nameof(effort), effort, "Not a known effort."),
    };

    /// <summary>Cautions; empty if there are none.</summary>
    public string Mind(Remedy remedy) => remedy.Kind switch
    {
        RemedyKind.Lead =>
            "Receiver on a lead: the console must have a receiver that can be unplugged. The length is measured along walls and floor. "
                + $"The receiver is fixed to a wall, or lies on a fixture, no more than {loaded.Lengths.Brief(ImproveRequest.GreatestFromFaceMetres)} from its face.",
        RemedyKind.OpenSide or RemedyKind.SwapSide =>
            $"Open side: only sides with {loaded.Lengths.Brief(ImproveRequest.LeastFreeAirMetres)} of free air in front are listed. "
                + "A metal rack may be earthed through its panels: ask a licensed electrician before you remove one.",
        RemedyKind.Shelf or RemedyKind.Wire when remedy.CrossesStructure => ThroughTheHouse,
        RemedyKind.Raise or RemedyKind.Shelf => "If you put up a shelf: fix it to something that carries the load, and check for pipes and cables before you drill.",
        RemedyKind.OpenDoor => "Door: keep fire doors shut; local codes decide.",
        RemedyKind.Controller => "Controllers: check that this console supports controllers of this class.",
        _ => "",
    };

    // What the cable is and what it takes, along the structure of the house.
    private static string RouteOf(Remedy remedy) => remedy.Run switch
    {
        null => "",
        { Route: null } => " (no route found along walls and floors)",
        { Kind: null } run => FormattableString.Invariant($" ({Holes(run.Route!)}; no lead in cables.yaml is as long)"),
        { Kind: { } kind } run => FormattableString.Invariant($" ({kind.Name}, {Holes(run.Route!)})"),
    };

    private static string Holes(Route route) => $"{Plural.Of(route.Holes, "hole")} to bore";

    private string RestOf(Remedy remedy) =>
        $"{(remedy.On.Length > 0 ? $"on top of '{remedy.On}'" : "on a wall")} {Place(Moved(remedy))} in '{remedy.Thing}'";

    private static MoveSpot Moved(Remedy remedy) => (MoveSpot)remedy.Edits[0];

    private string Length(Remedy remedy) => loaded.Lengths.InFeet
        ? loaded.Lengths.Brief(remedy.LengthMetres!.Value)
        : remedy.LengthMetres!.Value.ToString("0.#", CultureInfo.InvariantCulture) + " m";

    private string Place(MoveSpot move) => $"at {At(move.Plan)}, {loaded.Lengths.Brief(move.HeightMetres)} high";

    private string At(Point2 plan) => PlaceWords.At(plan, loaded.Lengths);

    // How far and whereto; on the plan north is up.
    private string Step(Remedy remedy)
    {
        Point2 step = ((MoveSeat)remedy.Edits[0]).Plan - loaded.House.Seats.First(seat => seat.Name == remedy.Thing).Plan;
        int eighth = (int)Math.Round(Math.Atan2(step.Y, step.X) / (Math.PI / 4));
        string[] winds = ["east", "north-east", "north", "north-west", "west", "south-west", "south", "south-east"];
        return $"{loaded.Lengths.Brief(Math.Sqrt(Point2.Dot(step, step)))} {winds[(eighth + winds.Length) % winds.Length]}";
    }

    private static string Side(Remedy remedy) => BitOperations.PopCount((uint)remedy.Side) > 1 ? "all free sides"
        : remedy.Side == BoxSides.Top ? "top"
        : $"{remedy.Side.ToString().ToLowerInvariant()} side";

    private string Turn(Remedy remedy)
    {
        double was = loaded.House.Seats.First(seat => seat.Name == remedy.Thing).FacingDegrees ?? 0;
        double turn = Math.IEEERemainder(((TurnSeat)remedy.Edits[0]).FacingDegrees - was, 360);
        return string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(turn):0} deg to the {(turn > 0 ? "left" : "right")}");
    }

    // A door without a name is called by its place already.
    private string DoorOf(Remedy remedy)
    {
        string name = PathWords.Named("door", remedy.Thing);
        bool isElsewhere = loaded.House.Levels.Where((_, i) => i != remedy.LevelIndex)
            .Any(level => level.Walls.Any(wall => wall.Openings.Any(o => o.Name == remedy.Thing)));
        return isElsewhere ? $"{name} on level '{loaded.House.Levels[remedy.LevelIndex!.Value].Name}'" : name;
    }
}
