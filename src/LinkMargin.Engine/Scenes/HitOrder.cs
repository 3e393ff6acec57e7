using LinkMargin.Engine.Links;

namespace LinkMargin.Engine.Scenes;

/// <summary>Puts the hits of a line in order and makes each joint of walls one hit.</summary>
internal static class HitOrder
{
    /// <summary>
    /// Sorts by place. Where walls join or cross, or a wall borders on its opening, the line meets several of them in one
    /// place: the one that takes most is kept, whichever order they were drawn in.
    /// </summary>
    internal static void Arrange(TraceBuffer buffer, double lengthMetres, double[] lossesDb)
    {
        Span<Hit> hits = buffer.Hits;
        Sort(hits);
        int kept = 0;
        for (int i = 0; i < hits.Length; i++)
        {
            int joint = IsOfAWall(hits[i]) ? JointBefore(hits[..kept], hits[i], lengthMetres) : -1;
            if (joint < 0)
            {
                hits[kept++] = hits[i];
            }
            else if (lossesDb[hits[i].Material] > lossesDb[hits[joint].Material])
            {
                hits[joint] = hits[i];
            }
        }

        buffer.KeepFirst(kept);
    }

    private static int JointBefore(Span<Hit> kept, in Hit hit, double lengthMetres)
    {
        for (int i = kept.Length - 1; i >= 0; i--)
        {
            if ((hit.Along - kept[i].Along) * lengthMetres > Touching.JointMetres)
            {
                return -1;
            }

            if (IsOfAWall(kept[i]))
            {
                return i;
            }
        }

        return -1;
    }

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
