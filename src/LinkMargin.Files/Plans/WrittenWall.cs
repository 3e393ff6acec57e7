using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Plans;

/// <summary>One straight stretch of a wall as written.</summary>
/// <param name="Name">Its name, numbered where the polyline has several stretches; null where none was given.</param>
/// <param name="PolylineName">The name as written.</param>
/// <param name="Segment">Where it runs.</param>
/// <param name="BaseMetres">Bottom edge above the floor, metres.</param>
/// <param name="TopMetres">Top edge above the floor, metres.</param>
/// <param name="IsFullHeight">Whether it closes a room: floor to ceiling.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Mark">Where it was written.</param>
internal sealed record WrittenWall(
    string? Name,
    string? PolylineName,
    Segment Segment,
    double BaseMetres,
    double TopMetres,
    bool IsFullHeight,
    Material Material,
    Mark Mark)
{
    /// <summary>What a message calls it.</summary>
    internal string Label(LengthFormat lengths) =>
        Name is null
            ? $"the {Material.Name} wall from {lengths.Place(Segment.Start)} to {lengths.Place(Segment.End)}"
            : $"wall {Quote.Of(Name)}";
}
