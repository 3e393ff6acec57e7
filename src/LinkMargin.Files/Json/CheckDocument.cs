using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Json;

/// <summary>The result of checking a house file, as JSON.</summary>
/// <param name="File">The house file.</param>
/// <param name="House">The house's name; omitted if the file has errors.</param>
/// <param name="Errors">How many errors there are.</param>
/// <param name="Warnings">How many warnings there are.</param>
/// <param name="Problems">All of them, in the order of the file.</param>
/// <param name="Levels">The levels as read; empty if the file has errors.</param>
/// <param name="Fixtures">How many fixtures there are.</param>
/// <param name="Spots">The spots' names.</param>
/// <param name="Seats">The seats' names.</param>
/// <param name="Zones">The names of the zones where a console may stand.</param>
/// <param name="KeepOuts">The names of the keep-outs, where no console may stand.</param>
/// <param name="Plan">The drawing; omitted if the file has errors.</param>
public sealed record CheckDocument(
    string File,
    string? House,
    int Errors,
    int Warnings,
    IReadOnlyList<ProblemDocument> Problems,
    IReadOnlyList<LevelDocument> Levels,
    int Fixtures,
    IReadOnlyList<string> Spots,
    IReadOnlyList<string> Seats,
    IReadOnlyList<string> Zones,
    IReadOnlyList<string> KeepOuts,
    string? Plan)
{
    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>A check as a document.</summary>
    public static CheckDocument Of(string file, House? house, IReadOnlyList<Problem> problems, string? plan)
    {
        ArgumentNullException.ThrowIfNull(problems);
        return new(
            file,
            house?.Name,
            problems.Count(p => p.Severity == Severity.Error),
            problems.Count(p => p.Severity == Severity.Warning),
            [.. problems.Select(ProblemDocument.From)],
            house is null ? [] : [.. house.Levels.Select(LevelDocument.From)],
            house?.Fixtures.Count ?? 0,
            house is null ? [] : [.. house.Spots.Select(spot => spot.Name)],
            house is null ? [] : [.. house.Seats.Select(seat => seat.Name)],
            house is null ? [] : [.. house.Zones.Select(zone => zone.Name)],
            house is null ? [] : [.. house.KeepOuts.Select(keepOut => keepOut.Name)],
            plan);
    }
}

/// <summary>One error or warning, as JSON.</summary>
/// <param name="File">The file.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Severity">error or warning.</param>
/// <param name="Message">What is wrong and what to do.</param>
public sealed record ProblemDocument(string File, int Line, int Column, string Severity, string Message)
{
    internal static ProblemDocument From(Problem problem) =>
        new(problem.File, problem.Mark.Line, problem.Mark.Column, problem.Severity == Problems.Severity.Error ? "error" : "warning", problem.Message);
}

/// <summary>One level as read, as JSON.</summary>
/// <param name="Name">Its name.</param>
/// <param name="ElevationM">Its floor above the lowest level's, metres.</param>
/// <param name="HeightM">Floor to ceiling, metres.</param>
/// <param name="Rooms">Its rooms, written in the file or found from the walls.</param>
/// <param name="Walls">How many walls it has; each straight stretch counts.</param>
/// <param name="Openings">How many openings they have.</param>
public sealed record LevelDocument(
    string Name, double ElevationM, double HeightM, IReadOnlyList<RoomDocument> Rooms, int Walls, int Openings)
{
    internal static LevelDocument From(Level level) => new(
        level.Name,
        level.ElevationMetres,
        level.HeightMetres,
        [.. level.Rooms.Select(room => new RoomDocument(room.Name, room.Outline.AreaSquareMetres))],
        level.Walls.Count,
        level.Walls.Sum(wall => wall.Openings.Count));
}

/// <summary>One room, as JSON.</summary>
/// <param name="Name">Its name.</param>
/// <param name="AreaM2">Its area, square metres.</param>
public sealed record RoomDocument(string Name, double AreaM2);
