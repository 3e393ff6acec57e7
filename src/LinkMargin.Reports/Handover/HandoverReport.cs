using System.Text;
using LinkMargin.Plots.Printing;
using LinkMargin.Reports.Documents;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Handover;

/// <summary>The report that a client is handed: what to do first, then why, then how certain that is, then everything behind it.</summary>
/// <param name="findings">What was computed.</param>
/// <param name="request">What a person gives it.</param>
internal sealed class HandoverReport(HandoverFindings findings, HandoverRequest request)
{
    /// <summary>The report as the bytes of a file.</summary>
    /// <param name="paper">The paper of a PDF; null for a page.</param>
    public byte[] Bytes(PaperSize? paper)
    {
        using ReportDocument report = Make();
        return paper is null ? Encoding.UTF8.GetBytes(HtmlWriter.Write(report)) : PdfWriter.Write(report, paper);
    }

    /// <summary>Puts it together.</summary>
    public ReportDocument Make()
    {
        var pictures = new HandoverPictures(findings, request.WidthPoints);
        var remedies = new RemedySection(findings);
        var certainty = new CertaintySection(findings, pictures);
        var verdict = new VerdictSection(findings, pictures, remedies, certainty);
        var appendix = new AppendixSections(findings, pictures);
        return new ReportDocument(
            request.Title ?? $"{findings.House.Name}: where to put the console",
            [
                verdict.Recommendation,
                verdict.Seats,
                pictures.Explore,
                remedies.Section,
                certainty.Certainty,
                certainty.ToVerify,
                new AlternativesSection(findings, pictures).Section,
                new AssumptionsSection(findings).Section,
                .. findings.Runs.Count > 0 ? [new RunsSection(findings, pictures).Section] : Array.Empty<ReportSection>(),
                new ReportSection("cautions", "Before work begins", [new ListBlock([.. Cautions.OfWork.Select(caution => new ListItem(caution))]), new ParagraphBlock(Cautions.Estimates)]),
                new ReportSection("signature", "Agreed", [new SignatureBlock(["date", request.By is { } by ? $"for {by}" : "prepared by", request.For is { } client ? $"for {client}" : "agreed by"])]),
                .. appendix.All,
            ])
        {
            Below = [.. Below()],
            Author = request.By ?? "",
            Logo = request.Logo,
            Foot = $"{findings.House.Name}. Planning estimates for {findings.House.Controller.Name} with {findings.House.ConsoleAt(findings.Chosen.Spot).Name}, {FrequencyWords} band. Made with LinkMargin.",
        };
    }

    private string FrequencyWords => FormattableString.Invariant($"{Math.Round(findings.Chosen.Budgets[0].Frequency.Gigahertz, 1):0.0} GHz");

    private IEnumerable<string> Below()
    {
        if (request.For is { } client)
        {
            yield return $"For {client}";
        }

        if (request.By is { } by)
        {
            yield return $"By {by}";
        }

        if (findings.Loaded.WhatIf.Count > 0)
        {
            yield return $"What if {findings.Loaded.WhatIfWords}";
        }

        if (findings.Loaded.FittedToMeasurements is { } count)
        {
            yield return FormattableString.Invariant($"Losses fitted to {count} measurements in the house");
        }
    }
}
