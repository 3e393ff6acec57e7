using LinkMargin.Files.Problems;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Commands;

/// <summary>Finds what an option names.</summary>
internal static class NamedThing
{
    /// <summary>The thing with exactly this name, or all of them if no name is given.</summary>
    public static IReadOnlyList<T> OneOrAll<T>(string option, string what, string? name, IReadOnlyList<T> things, Func<T, string> nameOf) =>
        name is null && things.Count > 0 ? things : [One(option, what, name, things, nameOf)];

    /// <summary>Reports that the house has none of what is needed.</summary>
    public static CannotBeDoneException NoneOf(string what) =>
        new($"the house has no {what}; add one under '{what}s:' in the house file");

    /// <summary>The thing with exactly this name, or the only one if no name is given.</summary>
    /// <param name="option">The option, such as <c>--spot</c>.</param>
    /// <param name="what">What it names, such as <c>spot</c>.</param>
    /// <param name="name">The name typed; null without the option.</param>
    /// <param name="things">The things.</param>
    /// <param name="nameOf">A thing's name.</param>
    public static T One<T>(string option, string what, string? name, IReadOnlyList<T> things, Func<T, string> nameOf)
    {
        string[] names = [.. things.Select(nameOf)];
        if (things.Count == 0)
        {
            throw NoneOf(what);
        }

        if (name is not null)
        {
            int found = Array.IndexOf(names, NameText.Normal(name));
            return found >= 0
                ? things[found]
                : throw new CannotBeDoneException($"there is no {what} {Quote.Of(name)}; {NearestWord.Advice(name, names)}");
        }

        return things.Count == 1
            ? things[0]
            : throw new CannotBeDoneException($"the house has {things.Count} {what}s; choose one with {option}: {string.Join(", ", names.Select(n => $"'{n}'"))}");
    }
}
