using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Plans;

/// <summary>
/// A door, window or gap as written. <paramref name="AtMetres"/> is the distance from the west or south end of the
/// stretch of wall it stands in to its nearer jamb; null centres it there.
/// </summary>
internal sealed record OpeningDraft(
    string? Name,
    OpeningKind Kind,
    OpeningPlace Place,
    double? AtMetres,
    double WidthMetres,
    double SillMetres,
    double HeightMetres,
    Material? Leaf,
    bool IsOpen,
    Mark Mark);
