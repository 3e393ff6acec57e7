using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Links.Stored;

/// <summary>Numbers the losses that may be shifted: first each material everywhere, then each material in each place where it is crossed.</summary>
internal sealed class ParameterList(Scene scene)
{
    private readonly List<LossParameter> all = [.. Enumerable.Range(0, scene.Materials.Count).Select(m => new LossParameter(m, null))];
    private readonly Dictionary<(int Material, int Place), int> places = [];

    /// <summary>All of them, in order.</summary>
    internal IReadOnlyList<LossParameter> All => all;

    /// <summary>The materials that a shift of one means: itself, or the layers of a whole floor.</summary>
    internal IReadOnlyList<int> PartsOf(int material) => scene.LayersOf(material);

    /// <summary>The number of a material in one place.</summary>
    internal int At(int material, int place)
    {
        if (!places.TryGetValue((material, place), out int number))
        {
            number = all.Count;
            places.Add((material, place), number);
            all.Add(new LossParameter(material, place));
        }

        return number;
    }
}

/// <summary>A loss that may differ from its table: that of a material everywhere, or in one place.</summary>
/// <param name="Material">The material, by its index in <see cref="StoredPaths.Materials"/>.</param>
/// <param name="Place">Which wall's plane or which floor, by an arbitrary number; null for everywhere.</param>
public readonly record struct LossParameter(int Material, int? Place);
