using System.Collections;
using LinkMargin.Engine.Paths;

namespace LinkMargin.Engine.Links;

/// <summary>The paths of a link, itemised on first use: searches compute thousands of links of which nobody reads the items.</summary>
internal sealed class ItemisedPaths(Func<IReadOnlyList<PathBudget>> itemise) : IReadOnlyList<PathBudget>
{
    private readonly Lazy<IReadOnlyList<PathBudget>> paths = new(itemise);

    /// <inheritdoc/>
    public int Count => paths.Value.Count;

    /// <inheritdoc/>
    public PathBudget this[int index] => paths.Value[index];

    /// <inheritdoc/>
    public IEnumerator<PathBudget> GetEnumerator() => paths.Value.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
