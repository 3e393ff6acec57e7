using System.Diagnostics.CodeAnalysis;
using QuikGraph;
using QuikGraph.Algorithms.ShortestPath;

namespace LinkMargin.Engine.Runs;

/// <summary>Shortest routes through a graph from one of its nodes, by Dijkstra's search as the graph library has it.</summary>
/// <typeparam name="TEdge">What joins its nodes.</typeparam>
internal sealed class ShortestRoutes<TEdge>
    where TEdge : IEdge<int>
{
    private readonly UndirectedDijkstraShortestPathAlgorithm<int, TEdge> search;
    private readonly Dictionary<int, TEdge> last = []; // the last edge of the best route to each node

    /// <summary>Searches from a node.</summary>
    /// <param name="graph">The graph.</param>
    /// <param name="source">The node.</param>
    /// <param name="cost">What an edge costs, 0 or more.</param>
    /// <remarks>The library finds the indexer of its dictionary by name, at run time. The attribute keeps it in a natively compiled program.</remarks>
    [DynamicDependency(DynamicallyAccessedMemberTypes.PublicProperties, typeof(Dictionary<int, double>))]
    internal ShortestRoutes(IUndirectedGraph<int, TEdge> graph, int source, Func<TEdge, double> cost)
    {
        search = new(graph, cost);
        search.TreeEdge += (_, found) => last[found.Target] = found.Edge;
        search.Compute(source);
    }

    /// <summary>The cost of the best route to a node; infinite where none leads there.</summary>
    internal double CostTo(int node) => search.GetDistance(node) is var cost && cost < double.MaxValue ? cost : double.PositiveInfinity;

    /// <summary>The last edge of the best route to a node.</summary>
    internal bool TryGetLast(int node, [MaybeNullWhen(false)] out TEdge edge) => last.TryGetValue(node, out edge);
}
