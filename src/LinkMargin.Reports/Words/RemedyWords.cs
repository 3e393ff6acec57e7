using System.Globalization;
using System.Numerics;
using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Reports.Words;

/// <summary>What a remedy is, what it asks of somebody, and what to mind.</summary>
/// <param name="loaded">The house.</param>
internal sealed class RemedyWords(LoadedHouse loaded)
{
    private const string ThroughTheHouse =
        "A cable through walls or floors has rules about its jacket and how holes are closed: local codes and licensed people decide, and nobody cuts a joist on a guess.";

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
        RemedyKind.MoveSeat => $"'{remedy.Thing}' moved to {At(((MoveSeat)remedy.Edits[0]).Plan)}",
        RemedyKind.OpenDoor => $"{DoorOf(remedy)} left open",
        RemedyKind.Controller => $"controllers of the class {remedy.Thing}",
        RemedyKind.Wire => $"controller on a {Length(remedy)} cable at '{remedy.Thing}'",
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

    /// <summary>What it asks of somebody, in a word or two.</summary>
    public static string Asks(Effort effort) => effort switch
    {
        Effort.Free => "nothing",
        Effort.Small => "a hand",
        Effort.Buy => "to buy",
        Effort.Cable => "a cable",
        _ => throw new ArgumentOutOfRangeException(nameof(effort), effort, "Not a known effort."),
    };

    /// <summary>What is involved and what to mind; empty where nothing is.</summary>
    public string Mind(Remedy remedy) => remedy.Kind switch
    {
        RemedyKind.Lead =>
            "A lead needs a console whose receiver can be unplugged and put on one; its length is measured square, along walls and floor. "
                + $"The receiver is stuck to a wall or lies on top of a fixture, within {loaded.Lengths.Brief(ImproveRequest.GreatestFromFaceMetres)} of it.",
        RemedyKind.OpenSide or RemedyKind.SwapSide =>
            $"A side is offered where it has {loaded.Lengths.Brief(ImproveRequest.LeastFreeAirMetres)} of free air before it. "
                + "A metal rack may be earthed through its panels: have a licensed electrician look before one goes.",
        RemedyKind.Shelf or RemedyKind.Wire when remedy.CrossesStructure => ThroughTheHouse,
        RemedyKind.Raise or RemedyKind.Shelf => "A board is fixed to what bears it: look for pipes and cables before you drill.",
        RemedyKind.OpenDoor => "A fire door stays shut: local codes decide, whatever a console would like.",
        RemedyKind.Controller => "Console and controllers must speak the same: see that this console takes the class.",
        _ => "",
    };

    private string RestOf(Remedy remedy) =>
        $"{(remedy.On.Length > 0 ? $"on top of '{remedy.On}'" : "on a wall")} {Place(Moved(remedy))} in '{remedy.Thing}'";

    private static MoveSpot Moved(Remedy remedy) => (MoveSpot)remedy.Edits[0];

    private string Length(Remedy remedy) => loaded.Lengths.InFeet
        ? loaded.Lengths.Brief(remedy.LengthMetres!.Value)
        : remedy.LengthMetres!.Value.ToString("0.#", CultureInfo.InvariantCulture) + " m";

    private string Place(MoveSpot move) => $"at {At(move.Plan)}, {loaded.Lengths.Brief(move.HeightMetres)} up";

    private string At(Point2 plan) => loaded.Lengths.InFeet
        ? $"({loaded.Lengths.Brief(plan.X)}, {loaded.Lengths.Brief(plan.Y)})"
        : string.Create(CultureInfo.InvariantCulture, $"({plan.X:0.00}, {plan.Y:0.00})");

    private static string Side(Remedy remedy) => BitOperations.PopCount((uint)remedy.Side) > 1 ? "every free side"
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
        string name = remedy.Thing.StartsWith("door ", StringComparison.Ordinal) ? remedy.Thing : $"door '{remedy.Thing}'";
        bool isElsewhere = loaded.House.Levels.Where((_, i) => i != remedy.LevelIndex)
            .Any(level => level.Walls.Any(wall => wall.Openings.Any(o => o.Name == remedy.Thing)));
        return isElsewhere ? $"{name} on level '{loaded.House.Levels[remedy.LevelIndex!.Value].Name}'" : name;
    }
}
