using System.Globalization;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Changes;

/// <summary>Walls that a file writes as one line of several stretches, named <c>NAME 1</c>, <c>NAME 2</c> and so on.</summary>
internal static class WallLine
{
    /// <summary>The names of all stretches of the line that a wall belongs to; only its own if it is a whole line.</summary>
    public static IReadOnlyList<string> NamesOf(IReadOnlyList<Wall> walls, string name)
    {
        int blank = name.LastIndexOf(' ');
        if (blank <= 0 || !int.TryParse(name[(blank + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out _))
        {
            return [name];
        }

        string line = name[..blank];
        List<string> names = [];
        for (int i = 1; walls.Any(wall => wall.Name == Numbered(line, i)); i++)
        {
            names.Add(Numbered(line, i));
        }

        return names.Count > 1 && names.Contains(name) ? names : [name];
    }

    private static string Numbered(string line, int number) => FormattableString.Invariant($"{line} {number}");
}
