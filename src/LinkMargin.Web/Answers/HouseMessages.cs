using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Words;
using LinkMargin.Web.Drawing;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Answers;

/// <summary>Makes the message that describes the house to the page.</summary>
internal static class HouseMessages
{
    /// <summary>Describes a state of a house.</summary>
    public static HouseMessage Of(TriedHouse tried, HouseState state, double confidence)
    {
        House house = state.Now.House;
        return new HouseMessage
        {
            Version = state.Version,
            Name = house.Name,
            File = tried.Source.Typed,
            InFeet = state.Now.Lengths.InFeet,
            Levels = [.. house.Levels.Select((_, i) => PlanDrawing.Of(house, i, FieldRequest.SofaHandsMetres))],
            Spots = [.. house.Spots.Select(spot => new SpotItem(spot.Name, spot.LevelIndex, spot.Plan.X, spot.Plan.Y, spot.HeightMetres, spot.Radio?.Name))],
            Seats = [.. house.Seats.Select(seat => new SeatItem(seat.Name, seat.LevelIndex, seat.Plan.X, seat.Plan.Y, seat.HandsMetres, seat.FacingDegrees, seat.RequiredDb, seat.Plays, seat.Faces))],
            Zones = [.. house.Zones.Select(zone => new ZoneItem(zone.Name, zone.LevelIndex, ShapeText.Closed(zone.Outline.Corners)))],
            Console = house.Console.Name,
            Controller = house.Controller.Name,
            RequiredDb = RequiredMargin.OfMost(house),
            Reached = UncertaintyWords.Reached(confidence),
            Confidence = confidence,
            Steps = [.. state.Steps.Select(step => string.Join(" and ", step.Words))],
            Undone = state.Undone,
            People = state.People,
            HandsMetres = FieldRequest.SofaHandsMetres,
            JournalNote = tried.Journal.IsBeside
                ? ""
                : $"The folder of the house file cannot be written, so the journal of your changes is kept at {tried.Journal.Path}.",
            Recoverable = tried.Recoverable,
            RecoveryNote = tried.RecoveryNote,
            Problems = [.. tried.Problems.Select(problem => new ProblemItem(problem.Mark.Line, problem.Mark.Column, problem.Severity == Severity.Error, problem.Message))],
        };
    }
}
