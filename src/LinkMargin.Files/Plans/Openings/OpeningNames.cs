using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Openings;

/// <summary>Names for openings without one in the file.</summary>
internal static class OpeningNames
{
    /// <summary>Its name, or its kind and place.</summary>
    internal static string NameOf(OpeningDraft opening) => opening.Name ?? $"{KindOf(opening.Kind)} {PlaceOf(opening.Place)}";

    /// <summary>Its name in a message.</summary>
    internal static string LabelOf(OpeningDraft opening) =>
        opening.Name is { } name ? $"{KindOf(opening.Kind)} {Quote.Of(name)}" : Quote.Of(NameOf(opening));

    private static string KindOf(OpeningKind kind) => kind switch
    {
        OpeningKind.Door => "door",
        OpeningKind.Window => "window",
        _ => "gap",
    };

    private static string PlaceOf(OpeningPlace place) => place switch
    {
        OpeningPlace.Between between => $"{between.RoomA} | {between.RoomB}",
        OpeningPlace.SideOf side => $"{PlanText.Side(side.Side)} of {side.Room}",
        OpeningPlace.InWall inWall => $"in {inWall.Wall}",
        _ => throw new ArgumentOutOfRangeException(nameof(place), place, "Not a known kind of place."),
    };
}
