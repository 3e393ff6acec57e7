using System.Globalization;
using System.Text;
using LinkMargin.Files.Writing;
using LinkMargin.Plots.Printing;

namespace LinkMargin.Reports.Documents;

/// <summary>
/// A report as one self-contained HTML file: style, script, fonts, pictures and values are embedded, and its security policy
/// forbids it to load anything.
/// </summary>
internal static class HtmlWriter
{
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; font-src data:; img-src data:";

    /// <summary>Writes a report.</summary>
    public static string Write(ReportDocument report)
    {
        string body = Body(report);
        (byte[] regular, byte[] bold) = WebFonts.For(body + ReportAssets.Script);
        return $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="generator" content="{GeneratorMark.Name}">
            <meta http-equiv="Content-Security-Policy" content="{Policy}">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <link rel="icon" href="data:,">
            <title>{Text(report.Title)}</title>
            <style>
            {Face(regular, 400)}
            {Face(bold, 700)}
            {ReportAssets.Style.Replace("FAMILY", WebFonts.Family, StringComparison.Ordinal)}
            </style>
            </head>
            <body>
            {body}
            </body>
            </html>

            """.ReplaceLineEndings("\n");
    }

    private static string Face(byte[] font, int weight) => string.Create(
        CultureInfo.InvariantCulture,
        $"@font-face {{ font-family: \"{WebFonts.Family}\"; font-weight: {(weight > 400 ? "600 900" : "100 500")}; src: url(data:font/ttf;base64,{Convert.ToBase64String(font)}); }}");

    private static string Body(ReportDocument report)
    {
        var html = new StringBuilder("<header>\n");
        if (report.Logo is { } logo)
        {
            html.Append(CultureInfo.InvariantCulture, $"<img class=\"logo\" alt=\"\" src=\"data:{logo.MediaType};base64,{Convert.ToBase64String([.. logo.Bytes])}\">\n");
        }

        html.Append(CultureInfo.InvariantCulture, $"<h1>{Text(report.Title)}</h1>\n");
        foreach (string line in report.Below)
        {
            html.Append(CultureInfo.InvariantCulture, $"<p class=\"below\">{Text(line)}</p>\n");
        }

        html.Append("</header>\n<main>\n");
        int pictures = 0;
        foreach (ReportSection section in report.Sections)
        {
            // A section that is only for the screen is left out in print.
            string[] classes = [.. section.BeginsPage ? ["page"] : Array.Empty<string>(), .. section.Blocks.All(block => block is ExploreBlock) ? ["screen"] : Array.Empty<string>()];
            html.Append(CultureInfo.InvariantCulture, $"<section id=\"{section.Id}\"{(classes.Length > 0 ? $" class=\"{string.Join(' ', classes)}\"" : "")}>\n<h2>{Text(section.Heading)}</h2>\n");
            foreach (ReportBlock block in section.Blocks)
            {
                html.Append(Of(block, ref pictures)).Append('\n');
            }

            html.Append("</section>\n");
        }

        return html.Append(CultureInfo.InvariantCulture, $"</main>\n<footer>{Text(report.Foot)}</footer>").ToString();
    }

    private static string Of(ReportBlock block, ref int pictures) => block switch
    {
        ParagraphBlock { Weight: TextWeight.Heading } heading => $"<h3>{Text(heading.Text)}</h3>",
        ParagraphBlock paragraph => $"<p{ClassOf(paragraph.Weight)}>{Text(paragraph.Text)}</p>",
        ListBlock list => List(list),
        TableBlock table => Table(table),
        PictureBlock picture => Figure(picture, ++pictures),
        ExploreBlock explore => Explore(explore.Map),
        SignatureBlock signature => $"<div class=\"signature\">{string.Concat(signature.Lines.Select(line => $"<div>{Text(line)}</div>"))}</div>",
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "Not a known part of a report."),
    };

    private static string ClassOf(TextWeight weight) => weight switch
    {
        TextWeight.Lead => " class=\"lead\"",
        TextWeight.Small => " class=\"small\"",
        _ => "",
    };

    private static string List(ListBlock list)
    {
        string tag = list.IsNumbered ? "ol" : "ul";
        return $"<{tag}>{string.Concat(list.Items.Select(item => $"<li>{Text(item.Text)}{Small(item.Detail)}</li>"))}</{tag}>";
    }

    private static string Table(TableBlock table)
    {
        var html = new StringBuilder(table.IsSmall ? "<div class=\"scroll\"><table class=\"dense\">" : "<div class=\"scroll\"><table>");
        double shares = table.Columns.Sum(column => column.Share);
        html.Append(CultureInfo.InvariantCulture, $"<colgroup>{string.Concat(table.Columns.Select(column => FormattableString.Invariant($"<col style=\"width:{100 * column.Share / shares:0.#}%\">")))}</colgroup>");
        html.Append("<thead><tr>");
        foreach (TableColumn column in table.Columns)
        {
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\"{Figures(column)}>{Text(column.Heading)}</th>");
        }

        html.Append("</tr></thead><tbody>");
        foreach (IReadOnlyList<TableCell> row in table.Rows)
        {
            html.Append("<tr>");
            foreach ((TableColumn column, TableCell cell) in table.Columns.Zip(row))
            {
                string text = cell.IsBold ? $"<b>{Text(cell.Text)}</b>" : cell.IsSmall ? Small(cell.Text) : Text(cell.Text);
                string sign = cell.Passes is { } passes ? $"<span class=\"sign\" aria-hidden=\"true\">{(passes ? "✓" : "✗")}</span>" : "";
                html.Append(CultureInfo.InvariantCulture, $"<td{Figures(column)}>{sign}{text}{Small(cell.Detail)}</td>");
            }

            html.Append("</tr>");
        }

        return html.Append("</tbody></table></div>").ToString();
    }

    private static string Figures(TableColumn column) => column.IsFigures ? " class=\"figures\"" : "";

    private static string Small(string detail) => detail.Length > 0 ? $"<small>{Text(detail)}</small>" : "";

    private static string Figure(PictureBlock block, int number)
    {
        string caption = block.Caption.Length > 0 ? $"<figcaption>{Text(block.Caption)}</figcaption>" : "";
        return $"<figure>{block.Picture.ToSvg(FormattableString.Invariant($"p{number}-"), block.Description)}{caption}</figure>";
    }

    private static string Explore(ExploreMap map) => $"""
        <div class="explore">
        <label>Spot <select id="explore-spot"></select></label>
        <label>Level <select id="explore-level"></select></label>
        <div><canvas id="explore-map" tabindex="0" aria-label="Map of the margin to count on; arrow keys move over it"></canvas></div>
        <output id="explore-said" aria-live="polite"></output>
        <noscript>This map needs a script, which this browser does not run.</noscript>
        <p class="legend">{string.Concat(map.Colours.Select(colour => $"<span><i style=\"background:{colour.Hex}\"></i>{Text(Layout.Figures.Plain(colour.FromDb))}</span>"))} dB and above</p>
        <p class="small">Colour: margin to count on. Stroked ground is below the {Text(Layout.Figures.Plain(map.RequiredDb))} dB that most seats require. Full disc: the seat passes; ring: it does not.</p>
        </div>
        <script type="application/json" id="explore-data">{map.ToJson()}</script>
        <script>
        {ReportAssets.Script}
        </script>
        """;

    // Control characters become spaces; everything that could be markup is escaped.
    private static string Text(string text)
    {
        var html = new StringBuilder(text.Length);
        foreach (char c in text)
        {
            html.Append(c switch
            {
                '&' => "&amp;",
                '<' => "&lt;",
                '>' => "&gt;",
                '"' => "&quot;",
                '\'' => "&#39;",
                _ when char.IsControl(c) => " ",
                _ => c.ToString(),
            });
        }

        return html.ToString();
    }
}
