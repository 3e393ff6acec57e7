using LinkMargin.Engine.Fitting;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Measurements;

/// <summary>What came of reading a file of readings.</summary>
/// <param name="Measurements">The readings, repeated ones put together; null exactly when there is a mistake.</param>
/// <param name="Problems">All mistakes and all that looks odd, in the order of the file.</param>
public sealed record MeasurementsParseResult(IReadOnlyList<Measurement>? Measurements, IReadOnlyList<Problem> Problems);
