using LinkMargin.Engine.Readings;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Readings;

/// <summary>What came of reading a file of readings.</summary>
/// <param name="Readings">The readings, repeated ones put together; null exactly when there is a mistake.</param>
/// <param name="Problems">All mistakes and all that looks odd, in the order of the file.</param>
public sealed record ReadingsReading(IReadOnlyList<Reading>? Readings, IReadOnlyList<Problem> Problems);
