using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Plans.Rooms;
using LinkMargin.Files.Plans.Shapes;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Walls;

/// <summary>Gives every wall its neighbours, its name and its material, in a fixed order.</summary>
internal sealed class WallLayout(PlanDraft draft, IReadOnlyList<RoomShape> rooms, PlanProblems problems)
{
    /// <summary>Stands in for a material that the level does not give, so that other errors can still be reported.</summary>
    private static readonly Material NotSaid = new("not said", 0, 0, "none");

    private readonly WallNeighbours neighbours = new(rooms);

    /// <summary>
    /// The rooms' walls by room, then west to east and south to north; then the written ones in written order.
    /// <paramref name="corners"/> are known corners that cut ends snap to.
    /// </summary>
    internal IReadOnlyList<LaidWall> Lay(
        IReadOnlyList<Segment> roomWalls, IReadOnlyList<WrittenWall> writtenWalls, PointIndex corners)
    {
        (Segment Wall, WallStretch Stretch)[] pieces =
        [
            .. roomWalls.SelectMany(s => Pieces(s, corners))
                .OrderBy(p => OwnerOf(p.Stretch))
                .ThenBy(p => p.Wall.Start.X)
                .ThenBy(p => p.Wall.Start.Y)
                .ThenBy(p => p.Wall.End.X)
                .ThenBy(p => p.Wall.End.Y),
        ];
        Material inner = MaterialFor("inner", draft.Inner, pieces.Select(p => p.Stretch).Where(IsInner));
        Material outer = MaterialFor("outer", draft.Outer, pieces.Select(p => p.Stretch).Where(s => !IsInner(s)));
        List<LaidWall> walls =
        [
            .. pieces.Select(p => new LaidWall(
                NameOf(p.Stretch),
                null,
                p.Wall,
                0,
                draft.HeightMetres,
                IsInner(p.Stretch) ? inner : outer,
                [p.Stretch])),
        ];
        Dictionary<string, int> unnamed = [];
        walls.AddRange(writtenWalls.Select(w => Written(w, unnamed)));
        return walls;
    }

    private IEnumerable<(Segment Wall, WallStretch Stretch)> Pieces(Segment wall, PointIndex corners)
    {
        foreach (WallStretch stretch in neighbours.Of(wall))
        {
            Segment part = new(corners.Snap(wall.PointAt(stretch.Span.From)), corners.Snap(wall.PointAt(stretch.Span.To)));
            yield return (part, stretch with { Span = new Span(0, part.Length) });
        }
    }

    private static bool IsInner(WallStretch stretch) => stretch is { Left: not null, Right: not null };

    private static int OwnerOf(WallStretch stretch) => stretch.Rooms is (>= 0, _) ? stretch.Rooms.Low : stretch.Rooms.High;

    private string NameOf(WallStretch stretch)
    {
        (int low, int high) = stretch.Rooms;
        return low < 0 ? $"{rooms[high].Name} | outside" : $"{rooms[low].Name} | {rooms[high].Name}";
    }

    private Material MaterialFor(string key, Material? written, IEnumerable<WallStretch> stretches)
    {
        if (written is null && stretches.FirstOrDefault() is { } first)
        {
            string kind = key == "outer" ? "outer walls" : "walls between rooms";
            problems.Error(
                draft.Rooms[0].Mark,
                $"level {Quote.Of(draft.LevelName)} does not say what its {kind} are made of, and "
                    + $"{Quote.Of(NameOf(first))} is one; add '{key}: MATERIAL' to the level, or write that wall under 'walls'");
        }

        return written ?? NotSaid;
    }

    private LaidWall Written(WrittenWall wall, Dictionary<string, int> unnamed)
    {
        IReadOnlyList<WallStretch> stretches = neighbours.Of(wall.Segment);
        return new LaidWall(
            wall.Name ?? NameBetween(stretches) ?? Numbered(wall.Material.Name, unnamed),
            wall.PolylineName,
            wall.Segment,
            wall.BaseMetres,
            wall.TopMetres,
            wall.Material,
            stretches);
    }

    /// <summary>A wall is named after the two rooms it separates if they are the same along its whole length.</summary>
    private string? NameBetween(IReadOnlyList<WallStretch> stretches) =>
        stretches.Select(s => s.Rooms).Distinct().Count() == 1 ? NameOf(stretches[0]) : null;

    private static string Numbered(string material, Dictionary<string, int> unnamed)
    {
        int number = unnamed[material] = unnamed.GetValueOrDefault(material) + 1;
        return FormattableString.Invariant($"{material} wall {number}");
    }
}

/// <summary>A wall of the level in its final place, before its openings are cut.</summary>
/// <param name="Name">Its name.</param>
/// <param name="PolylineName">The name of the polyline it was written in, if it had one.</param>
/// <param name="Segment">Its position, west or south end first.</param>
/// <param name="BaseMetres">Bottom edge above the floor, metres.</param>
/// <param name="TopMetres">Top edge above the floor, metres.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Stretches">The rooms on its two sides, stretch by stretch.</param>
internal sealed record LaidWall(
    string Name,
    string? PolylineName,
    Segment Segment,
    double BaseMetres,
    double TopMetres,
    Material Material,
    IReadOnlyList<WallStretch> Stretches);
