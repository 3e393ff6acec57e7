namespace LinkMargin.Engine.Scenes;

/// <summary>Gives each distinct thing a number, in the order they come.</summary>
internal sealed class Numbered<T>
    where T : notnull
{
    private readonly Dictionary<T, int> numbers = [];
    private readonly List<T> all = [];

    internal IReadOnlyList<T> All => all;

    internal int Of(T thing)
    {
        if (!numbers.TryGetValue(thing, out int number))
        {
            number = all.Count;
            numbers.Add(thing, number);
            all.Add(thing);
        }

        return number;
    }
}
