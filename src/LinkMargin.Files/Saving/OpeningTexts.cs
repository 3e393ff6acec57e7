using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Saving;

/// <summary>Writes doors and windows that were opened or closed into the text of a level.</summary>
internal sealed class OpeningTexts(TextSurgery surgery, int level)
{
    private TextGroup Level => surgery.Root.Listed("levels").ElementAt(level);

    /// <summary>Writes those that changed. Edits keep the order of walls and openings.</summary>
    public void Write(Level was, Level now)
    {
        IEnumerable<(Opening Was, Opening Now)> pairs = was.Walls.Zip(now.Walls).SelectMany(walls => walls.First.Openings.Zip(walls.Second.Openings));
        foreach (Opening opening in pairs.Where(pair => pair.Was.IsOpen != pair.Now.IsOpen).Select(pair => pair.Now).DistinctBy(one => (one.Kind, one.Name)))
        {
            string key = opening.Kind == OpeningKind.Door ? "doors" : "windows", word = opening.IsOpen ? "true" : "false";
            int count = Level.Listed(key).Count();
            for (int i = 0; i < count; i++)
            {
                // Read again each time, because each change moves the text after it.
                TextGroup node = Level.Listed(key).ElementAt(i);
                if (NameOf(node, opening.Kind == OpeningKind.Door ? "door" : "window") == opening.Name && node.ValueOf("open") != word)
                {
                    Write(node, opening.IsOpen, word);
                }
            }
        }
    }

    private void Write(TextGroup node, bool isOpen, string word)
    {
        if (isOpen || node.Of("open") is not null)
        {
            surgery.Set(node, "open", word);
        }
    }

    // The same default names as in OpeningNames.
    private static string NameOf(TextGroup node, string kind) =>
        node.ValueOf("name") is { } name ? NameText.Normal(name)
        : node.Of("between")?.Value is TextList { Items: [TextScalar a, TextScalar b] } ? $"{kind} {NameText.Normal(a.Value)} | {NameText.Normal(b.Value)}"
        : node.ValueOf("room") is { } room ? $"{kind} {node.ValueOf("side")} of {NameText.Normal(room)}"
        : $"{kind} in {NameText.Normal(node.ValueOf("wall") ?? "")}";
}
