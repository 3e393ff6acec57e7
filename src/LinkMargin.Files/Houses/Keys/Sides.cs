using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans.Drafts;

namespace LinkMargin.Files.Houses.Keys;

/// <summary>The words for sides and directions. North is towards larger y, east towards larger x.</summary>
internal static class Sides
{
    /// <summary>Sides of a room.</summary>
    public static IReadOnlyDictionary<string, PlanSide> OfPlan { get; } = new Dictionary<string, PlanSide>
    {
        ["north"] = PlanSide.North,
        ["east"] = PlanSide.East,
        ["south"] = PlanSide.South,
        ["west"] = PlanSide.West,
    };

    /// <summary>Vertical sides of a fixture by compass.</summary>
    public static IReadOnlyDictionary<string, BoxSides> OfCompass { get; } = new Dictionary<string, BoxSides>
    {
        ["north"] = BoxSides.North,
        ["east"] = BoxSides.East,
        ["south"] = BoxSides.South,
        ["west"] = BoxSides.West,
    };

    /// <summary>Compass directions, degrees anticlockwise from east, which is the x axis.</summary>
    public static IReadOnlyDictionary<string, double> Directions { get; } = new Dictionary<string, double>
    {
        ["east"] = 0,
        ["north-east"] = 45,
        ["north"] = 90,
        ["north-west"] = 135,
        ["west"] = 180,
        ["south-west"] = 225,
        ["south"] = 270,
        ["south-east"] = 315,
    };

    /// <summary>All words for the sides of a fixture with a known front. Left and right are as seen by a person facing the front.</summary>
    public static IReadOnlyDictionary<string, BoxSides> OfFixture(BoxSides front)
    {
        BoxSides[] anticlockwise = [BoxSides.South, BoxSides.East, BoxSides.North, BoxSides.West];
        int at = Array.IndexOf(anticlockwise, front);
        return new Dictionary<string, BoxSides>(OfCompass)
        {
            ["front"] = front,
            ["right"] = anticlockwise[(at + 1) % 4],
            ["back"] = anticlockwise[(at + 2) % 4],
            ["left"] = anticlockwise[(at + 3) % 4],
            ["top"] = BoxSides.Top,
            ["bottom"] = BoxSides.Bottom,
        };
    }
}
