using LinkMargin.Engine.Houses;

namespace LinkMargin.Reports.Words;

/// <summary>Which seats have people on them, in words.</summary>
internal static class OccupiedWords
{
    /// <summary>Their names with commas and a last "and".</summary>
    public static string List(IReadOnlyList<Seat> seats)
    {
        string[] names = [.. seats.Select(seat => $"'{seat.Name}'")];
        return names.Length == 1 ? names[0] : $"{string.Join(", ", names[..^1])} and {names[^1]}";
    }
}
