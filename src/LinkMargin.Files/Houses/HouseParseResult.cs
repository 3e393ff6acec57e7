using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Houses;

/// <summary>What came of reading a house file.</summary>
/// <param name="House">The house; null exactly when there is a mistake.</param>
/// <param name="Problems">All mistakes and all that looks odd, in the order of the file.</param>
public sealed record HouseParseResult(House? House, IReadOnlyList<Problem> Problems)
{
    /// <summary>The unit of the file's bare lengths, so that answers can be given in the words of the question.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Metre;
}
