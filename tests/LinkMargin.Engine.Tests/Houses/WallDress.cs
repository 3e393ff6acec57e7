using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>What a wall is like, whatever its length: put on a line it becomes a wall.</summary>
/// <param name="Material">What it is made of.</param>
/// <param name="Partial">0: part of the height from the floor; 1: hangs from the ceiling; else full.</param>
/// <param name="Edge">Where a part ends, as a share of the height.</param>
/// <param name="Openings">Its openings, in order from its start.</param>
internal sealed record WallDress(Material Material, int Partial, double Edge, OpeningDress[] Openings)
{
    internal Wall On(string name, Point2 start, Point2 end, double heightMetres)
    {
        double edge = Math.Round(Edge * heightMetres, 1);
        double bottom = Partial == 1 ? edge : 0, top = Partial == 0 ? edge : heightMetres;
        double slot = start.DistanceTo(end) / Math.Max(1, Openings.Length);
        return new Wall(name, start, end, bottom, top, Material)
        {
            Openings = [.. Openings
                .Select((o, i) => o.In($"{name} opening {i}", i * slot, slot, bottom, top))
                .OfType<Opening>()],
        };
    }
}
