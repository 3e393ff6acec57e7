using LinkMargin.Engine.Fitting;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Measurements;

/// <summary>What came of reading a fitted file.</summary>
/// <param name="Fitted">What it holds; null exactly when there is a mistake.</param>
/// <param name="Problems">All mistakes and all that looks odd, in the order of the file.</param>
public sealed record FittedParseResult(FittedLosses? Fitted, IReadOnlyList<Problem> Problems);
