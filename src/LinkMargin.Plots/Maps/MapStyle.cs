namespace LinkMargin.Plots.Maps;

/// <summary>How much a map says, and how large.</summary>
/// <param name="LabelPoints">Size of seat and spot labels, points.</param>
/// <param name="FigurePoints">Size of figures on lines of equal margin, points.</param>
/// <param name="HasSpotLabel">Whether the spot's name stands at its mark.</param>
/// <param name="HasRoomNames">Whether rooms are named.</param>
internal sealed record MapStyle(double LabelPoints, double FigurePoints, bool HasSpotLabel, bool HasRoomNames)
{
    /// <summary>A map that stands alone.</summary>
    public static MapStyle Single { get; } = new(10, 8.5, HasSpotLabel: true, HasRoomNames: true);

    /// <summary>A map among others, read small; the head of its column names the spot.</summary>
    public static MapStyle OnSheet { get; } = new(11.5, 9.5, HasSpotLabel: false, HasRoomNames: false);
}
