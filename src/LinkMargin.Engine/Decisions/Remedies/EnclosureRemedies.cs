using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>The sides of the fixture that the console is in: left open, or made of another material.</summary>
internal static class EnclosureRemedies
{
    private static readonly BoxSides[] Sides = [BoxSides.West, BoxSides.East, BoxSides.South, BoxSides.North, BoxSides.Top];

    /// <summary>The hollow fixture a spot is in, the smallest where several are; null where it stands free.</summary>
    public static Fixture? HostOf(House house, Spot spot) => house.Fixtures
        .Where(fixture => fixture.IsShell && fixture.LevelIndex == spot.LevelIndex && fixture.Contains(spot.Plan, spot.HeightMetres))
        .MinBy(fixture => fixture.SizeX * fixture.SizeY * (fixture.ToMetres - fixture.FromMetres));

    /// <summary>
    /// Each closed side with free air in front of it: opened, and made of each of some materials; and all of them together.
    /// </summary>
    public static IEnumerable<Remedy> All(RemedyTrial trial, IReadOnlyList<Material> panels)
    {
        if (HostOf(trial.House, trial.Spot) is not { } host)
        {
            yield break;
        }

        BoxSides[] closed = [.. Sides.Where(side => (host.OpenSides & side) == 0 && FreeAir.IsBefore(trial.House, host, side))];
        BoxSides[][] sets = [.. closed.Select(side => new[] { side }), .. closed.Length > 1 ? [closed] : Array.Empty<BoxSides[]>()];
        foreach (BoxSides[] sides in sets)
        {
            BoxSides all = sides.Aggregate((some, side) => some | side);
            yield return new Remedy(RemedyKind.OpenSide, Effort.Free, [new OpenFixtureSide(host.Name, all)]) { Thing = host.Name, Side = all };
            foreach (Material material in panels.Where(material => sides.Any(side => host.PanelOn(side)!.Name != material.Name)))
            {
                yield return new Remedy(RemedyKind.SwapSide, Effort.Buy, [.. sides.Select(side => new SwapFixtureSide(host.Name, side, material))])
                {
                    Thing = host.Name,
                    Side = all,
                    Material = material.Name,
                };
            }
        }
    }
}
