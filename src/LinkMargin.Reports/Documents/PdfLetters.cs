using LinkMargin.Plots.Printing;

namespace LinkMargin.Reports.Documents;

/// <summary>The letters of a report as PDF.</summary>
internal static class PdfLetters
{
    /// <summary>From one line to the next, share of the letters' size.</summary>
    internal const double LineShare = 1.35;

    internal static readonly PageLetters Title = new(20, true);
    internal static readonly PageLetters Heading = new(14, true);
    internal static readonly PageLetters SubHeading = new(11, true);
    internal static readonly PageLetters Lead = new(13.5);
    internal static readonly PageLetters Usual = new(10);
    internal static readonly PageLetters Strong = new(10, true);
    internal static readonly PageLetters Small = new(8.5);
    internal static readonly PageLetters Tiny = new(7.6);
    internal static readonly PageLetters TinyStrong = new(7.6, true);
}
