using System.Text.Json.Serialization;

namespace LinkMargin.Web.Protocol;

/// <summary>A message to the page; its type is written first.</summary>
/// <param name="Type">The kind of message.</param>
internal abstract record Message([property: JsonPropertyOrder(-1)] string Type);

/// <summary>The house as the page draws it, and what can be done with it. Lengths are metres.</summary>
internal sealed record HouseMessage() : Message("house")
{
    public required int Version { get; init; }

    public required string Name { get; init; }

    public required string File { get; init; }

    /// <summary>Whether lengths are shown in feet and inches.</summary>
    public required bool InFeet { get; init; }

    public required IReadOnlyList<LevelDrawing> Levels { get; init; }

    public required IReadOnlyList<SpotItem> Spots { get; init; }

    public required IReadOnlyList<SeatItem> Seats { get; init; }

    public required IReadOnlyList<ZoneItem> Zones { get; init; }

    public required string Console { get; init; }

    public required string Controller { get; init; }

    /// <summary>The margin that most seats require, dB; it has the boldest line.</summary>
    public required double RequiredDb { get; init; }

    /// <summary>What the margin to count on is, in words: <c>reached with 90 % confidence</c>.</summary>
    public required string Reached { get; init; }

    /// <summary>The same as a share, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>The steps tried, in words.</summary>
    public required IReadOnlyList<string> Steps { get; init; }

    public required int Undone { get; init; }

    public required IReadOnlyList<string> People { get; init; }

    /// <summary>Height of the hands for the map, metres above the floor.</summary>
    public required double HandsMetres { get; init; }

    /// <summary>What the user should know about the journal; empty if nothing.</summary>
    public required string JournalNote { get; init; }

    /// <summary>How many steps of an earlier page can be recovered.</summary>
    public required int Recoverable { get; init; }

    public required string RecoveryNote { get; init; }

    /// <summary>Errors and warnings of the file on disk, in the words of <c>check</c>.</summary>
    public required IReadOnlyList<ProblemItem> Problems { get; init; }
}

/// <summary>One level. Shapes are SVG paths in metres, y pointing north.</summary>
internal sealed record LevelDrawing(string Name, double HeightMetres, double[] Bounds)
{
    public required IReadOnlyList<RoomItem> Rooms { get; init; }

    /// <summary>All rooms as one shape.</summary>
    public required string Floor { get; init; }

    public required IReadOnlyList<WallItem> Walls { get; init; }

    public required IReadOnlyList<OpeningItem> Openings { get; init; }

    public required string Joists { get; init; }

    /// <summary>Holes in its own floor.</summary>
    public required string Voids { get; init; }

    public required IReadOnlyList<FixtureItem> Fixtures { get; init; }
}

internal sealed record RoomItem(string Name, double X, double Y, double Width, double Height);

internal sealed record WallItem(string Name, string Material, bool Full, string Shape);

internal sealed record OpeningItem(string Name, string Kind, bool Open, string Material, string Shape, string Leaf, string Swing, double X, double Y);

/// <summary>A fixture; <paramref name="Fills"/> says whether it is solid at the map's height, so that no margin is shown there.</summary>
internal sealed record FixtureItem(string Name, string Material, bool Hollow, bool Fills, string Outline, string Sides);

/// <summary>A spot; <paramref name="Console"/> is the radio of its own console, null where it has that of the house.</summary>
internal sealed record SpotItem(string Name, int Level, double X, double Y, double Height, string? Console);

internal sealed record SeatItem(string Name, int Level, double X, double Y, double Hands, double? Facing, double RequiredDb, string? Plays, string? Faces);

internal sealed record ZoneItem(string Name, int Level, string Outline);

internal sealed record ProblemItem(int Line, int Column, bool IsError, string Words);

/// <summary>The colours of margins, lowest first: one per step from <paramref name="LeastDb"/>.</summary>
internal sealed record ScaleMessage(double LeastDb, double GreatestDb, double StepDb, IReadOnlyList<string> Tones, IReadOnlyList<double> Lines, IReadOnlyList<string> ProbabilityTones)
    : Message("scale");
