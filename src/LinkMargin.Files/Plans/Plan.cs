using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Plans;

/// <summary>One level's plan, laid out: every stretch of wall once, openings in their walls, rooms written and found.</summary>
internal sealed record Plan(IReadOnlyList<Room> Rooms, IReadOnlyList<Wall> Walls);
