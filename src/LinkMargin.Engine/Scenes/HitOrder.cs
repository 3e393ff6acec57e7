using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>Puts the hits of a line in order and makes each joint of walls one hit.</summary>
internal static class HitOrder
{
    /// <summary>
    /// Sorts by place. Where walls join or cross, or a wall borders on its opening, the line meets several of them in one
    /// place: the one with the most loss is kept, of two alike the one met at the greater slant, in whatever order they were
    /// drawn and from whichever end the line starts.
    /// </summary>
    /// <param name="buffer">The hits.</param>
    /// <param name="lengthMetres">Length of the line, metres.</param>
    /// <param name="rank">Of each material by number: the greater, the greater its loss.</param>
    internal static void Arrange(TraceBuffer buffer, double lengthMetres, int[] rank)
    {
        Span<Hit> hits = buffer.Hits;
        Sort(hits);
        int kept = 0, joint = -1;
        double reached = 0; // along the line, where the last wall was met
        for (int i = 0; i < hits.Length; i++)
        {
            if (!IsOfAWall(hits[i]))
            {
                hits[kept++] = hits[i];
                continue;
            }

            bool isOfTheJoint = joint >= 0 && (hits[i].Along - reached) * lengthMetres <= GeometryTolerances.JointMetres;
            reached = hits[i].Along;
            if (!isOfTheJoint)
            {
                joint = kept;
                hits[kept++] = hits[i];
            }
            else if (TakesMore(hits[i], hits[joint], rank))
            {
                hits[joint] = hits[i];
            }
        }

        buffer.KeepFirst(kept);
    }

    private static bool TakesMore(in Hit one, in Hit other, int[] rank) =>
        rank[one.Material] != rank[other.Material]
            ? rank[one.Material] > rank[other.Material]
            : one.CosIncidence < other.CosIncidence;

    private static bool IsOfAWall(in Hit hit) => hit.Kind is ObstacleKind.Wall or ObstacleKind.Opening;

    // Few hits, nearly in order: insertion beats a general sort and keeps equals in their order.
    private static void Sort(Span<Hit> hits)
    {
        for (int i = 1; i < hits.Length; i++)
        {
            Hit moving = hits[i];
            int j = i - 1;
            while (j >= 0 && hits[j].Along > moving.Along)
            {
                hits[j + 1] = hits[j];
                j--;
            }

            hits[j + 1] = moving;
        }
    }
}
