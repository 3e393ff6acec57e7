using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Plans;

/// <summary>One level's plan as written, lengths in metres. Outer and inner are null where the file does not say.</summary>
internal sealed record PlanDraft(
    string LevelName,
    double HeightMetres,
    Material? Outer,
    Material? Inner,
    IReadOnlyList<RoomDraft> Rooms,
    IReadOnlyList<WallDraft> Walls,
    IReadOnlyList<OpeningDraft> Openings);
