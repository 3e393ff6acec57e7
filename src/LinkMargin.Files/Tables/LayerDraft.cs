using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tables;

/// <summary>A layer of a construction as written: the row it is of, or air, and how thick, if that is said.</summary>
internal sealed record LayerDraft(string Of, Mark OfMark, double? ThicknessMetres, double ToleranceMetres);
