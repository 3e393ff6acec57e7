using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>
/// One change to a house, as somebody would make it in the house file. It never changes the house it is given: it returns
/// another one, equal to what the edited file gives.
/// </summary>
public abstract record HouseEdit
{
    /// <summary>The house with this change.</summary>
    /// <exception cref="ArgumentException">The house has nothing with the name that the edit is about.</exception>
    public abstract House ApplyTo(House house);

    /// <summary>A list with some of its items changed; there must be at least one of them.</summary>
    internal static IReadOnlyList<T> Changed<T>(IReadOnlyList<T> items, Func<T, bool> isMeant, Func<T, T> change, string what)
    {
        int changed = 0;
        T[] after = [.. items.Select(item =>
        {
            if (!isMeant(item))
            {
                return item;
            }

            changed++;
            return change(item);
        })];
        return changed > 0 ? after : throw new ArgumentException($"The house has no {what}.", nameof(items));
    }

    /// <summary>The house with some of its walls changed; there must be at least one of them.</summary>
    internal static House WithWalls(House house, int? levelIndex, Func<Wall, bool> isMeant, Func<Wall, Wall> change, string what)
    {
        bool found = false;
        Level[] levels = [.. house.Levels.Select((level, i) =>
        {
            if ((levelIndex is { } only && only != i) || !level.Walls.Any(isMeant))
            {
                return level;
            }

            found = true;
            return level with { Walls = [.. level.Walls.Select(wall => isMeant(wall) ? change(wall) : wall)] };
        })];
        return found ? house with { Levels = levels } : throw new ArgumentException($"The house has no {what}.", nameof(house));
    }
}
