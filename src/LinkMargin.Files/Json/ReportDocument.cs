namespace LinkMargin.Files.Json;

/// <summary>A report that was written, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Spot">The spot it is about.</param>
/// <param name="Level">The level the spot is on.</param>
/// <param name="IsBest">Whether that is the best spot.</param>
/// <param name="SeatsPassing">How many seats pass there.</param>
/// <param name="Seats">How many seats play there.</param>
/// <param name="Verify">What to verify on site, most important first.</param>
/// <param name="Report">The report's file.</param>
/// <param name="Data">The data files; empty if not requested.</param>
public sealed record ReportDocument(
    string House,
    string Spot,
    string Level,
    bool IsBest,
    int SeatsPassing,
    int Seats,
    IReadOnlyList<string> Verify,
    string Report,
    IReadOnlyList<string> Data)
{
    /// <summary>The archive of everything; omitted if not requested.</summary>
    public string? Bundle { get; init; }

    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many measurements the losses were fitted to; omitted for table losses.</summary>
    public int? FittedToMeasurements { get; init; }
}
