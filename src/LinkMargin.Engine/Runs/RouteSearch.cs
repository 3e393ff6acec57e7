using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>
/// Finds routes in a house's structure: those with the fewest holes to bore and, of those, the shortest. What was searched from one end is
/// kept.
/// </summary>
internal sealed class RouteSearch(StructureGraph structure)
{
    private readonly Dictionary<CablePlace, ShortestRoutes<StructureEdge>> searched = []; // by where the search began
    private readonly Dictionary<(CablePlace, CablePlace), Route?> found = [];

    /// <summary>The route between two ends of the structure; null if there is none.</summary>
    internal Route? Find(CablePlace from, CablePlace to)
    {
        if (!found.TryGetValue((from, to), out Route? route))
        {
            route = Search(from, to);
            found.Add((from, to), route);
        }

        return route;
    }

    // A route is the same in both directions, and many spots share a few displays and devices: search from the far end, once.
    private Route? Search(CablePlace from, CablePlace to)
    {
        bool isForwards = searched.ContainsKey(from) && !searched.ContainsKey(to);
        (int source, int target) = isForwards ? (structure.NodeOf(from), structure.NodeOf(to)) : (structure.NodeOf(to), structure.NodeOf(from));
        if (!searched.TryGetValue(isForwards ? from : to, out ShortestRoutes<StructureEdge>? routes))
        {
            routes = new(structure.Graph, source, edge => edge.Cost);
            searched.Add(isForwards ? from : to, routes);
        }

        List<StructureEdge> edges = [];
        for (int at = target; at != source;)
        {
            if (!routes.TryGetLast(at, out StructureEdge edge))
            {
                return null;
            }

            edge = edge.Target == at ? edge : edge.Turned;
            edges.Add(isForwards ? edge : edge.Turned);
            at = edge.Source;
        }

        if (isForwards)
        {
            edges.Reverse();
        }

        return new Route(Joined([.. LegsOf(edges)]));
    }

    // What leads through one floor is laid in as few legs as it takes.
    private IEnumerable<RouteLeg> LegsOf(List<StructureEdge> edges)
    {
        for (int i = 0; i < edges.Count;)
        {
            if (edges[i].Kind != LegKind.InFloor)
            {
                yield return structure.LegOf(edges[i++]);
                continue;
            }

            List<Point3> way = [structure.PlaceOf(edges[i].Source)];
            string where = edges[i].Where;
            for (; i < edges.Count && edges[i].Kind == LegKind.InFloor && edges[i].Where == where; i++)
            {
                way.Add(structure.PlaceOf(edges[i].Target));
            }

            foreach (RouteLeg leg in structure.FloorAbove(where).Legs(way))
            {
                yield return leg;
            }
        }
    }

    // Joins consecutive legs of one kind in a straight line.
    private static List<RouteLeg> Joined(IReadOnlyList<RouteLeg> legs)
    {
        List<RouteLeg> joined = [];
        foreach (RouteLeg leg in legs.Where(leg => leg.LengthMetres > GeometryTolerances.SlackMetres || leg.Holes > 0))
        {
            if (joined.Count > 0 && joined[^1] is var last && last.Kind == leg.Kind && last.Where == leg.Where && leg.Holes == 0 && last.Holes == 0
                && last.Corner is null && leg.Corner is null
                && (last.To - last.From).Cross(leg.To - leg.From).Length <= GeometryTolerances.SlackMetres)
            {
                joined[^1] = last with { To = leg.To, LengthMetres = last.LengthMetres + leg.LengthMetres };
            }
            else
            {
                joined.Add(leg);
            }
        }

        return joined;
    }
}
