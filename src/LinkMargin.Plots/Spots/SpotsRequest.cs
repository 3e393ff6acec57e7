namespace LinkMargin.Plots.Spots;

/// <summary>What a picture of seats against spots shows.</summary>
/// <param name="Title">Above it.</param>
/// <param name="Caption">Below it.</param>
/// <param name="Spots">The spots, best first, each as the key names it.</param>
/// <param name="Seats">The seats, from the top.</param>
public sealed record SpotsRequest(string Title, string Caption, IReadOnlyList<string> Spots, IReadOnlyList<SpotsSeat> Seats)
{
    /// <summary>How often the margin to count on is there, in words.</summary>
    public required string Often { get; init; }
}
