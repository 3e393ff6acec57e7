using LinkMargin.Engine.Houses;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans.Openings;

/// <summary>What an opening is called where the file gives it no name.</summary>
internal static class OpeningNames
{
    /// <summary>Its name, or what it is and where.</summary>
    internal static string NameOf(OpeningDraft opening) => opening.Name ?? $"{KindOf(opening.Kind)} {PlaceOf(opening.Place)}";

    /// <summary>What a message calls it.</summary>
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
