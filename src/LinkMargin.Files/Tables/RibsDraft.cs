using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Tables;

/// <summary>Studs or joists as written, lengths in metres.</summary>
internal sealed record RibsDraft(string Of, Mark OfMark, double WidthMetres, double DepthMetres, double SpacingMetres);
