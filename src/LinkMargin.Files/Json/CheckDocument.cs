using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Json;

/// <summary>What came of checking a house file, as JSON.</summary>
/// <param name="File">The house file.</param>
/// <param name="House">The house's name; left out where the file must be mended first.</param>
/// <param name="Mistakes">How many mistakes there are.</param>
/// <param name="Odd">How many things look odd.</param>
/// <param name="Problems">All of them, in the order of the file.</param>
/// <param name="Levels">The levels as they were read; empty where the file must be mended first.</param>
/// <param name="Fixtures">How many fixtures there are.</param>
/// <param name="Spots">The spots' names.</param>
/// <param name="Seats">The seats' names.</param>
/// <param name="Zones">The names of the places where a console may stand.</param>
/// <param name="KeepOuts">The names of the places where none may.</param>
/// <param name="Plan">The drawing; left out where the file must be mended first.</param>
public sealed record CheckDocument(
    string File,
    string? House,
    int Mistakes,
    int Odd,
    IReadOnlyList<ProblemDocument> Problems,
    IReadOnlyList<LevelDocument> Levels,
    int Fixtures,
    IReadOnlyList<string> Spots,
    IReadOnlyList<string> Seats,
    IReadOnlyList<string> Zones,
    IReadOnlyList<string> KeepOuts,
    string? Plan)
{
    /// <summary>What is different from the house file; left out where nothing is.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>A check as JSON says it.</summary>
    public static CheckDocument Of(string file, House? house, IReadOnlyList<Problem> problems, string? plan)
    {
        ArgumentNullException.ThrowIfNull(problems);
        return new(
            file,
            house?.Name,
            problems.Count(p => p.Severity == Severity.Mistake),
            problems.Count(p => p.Severity == Severity.Odd),
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
