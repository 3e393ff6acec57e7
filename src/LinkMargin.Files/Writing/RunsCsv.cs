using System.Globalization;
using CsvHelper;
using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Runs;
using LinkMargin.Files.Cables;

namespace LinkMargin.Files.Writing;

/// <summary>Runs as comma-separated values: a heading row, then a row for each run of each spot.</summary>
public static class RunsCsv
{
    /// <summary>The headings; each carries its unit.</summary>
    public static IReadOnlyList<string> Headings { get; } =
        ["spot", "order", "from", "to", "means", "cable", "signal", "lineGbps", "carries", "routeM", "slackM", "buyM", "coilM", "holes"];

    /// <summary>The first line, by which the program recognises its own file.</summary>
    internal static string HeadingLine { get; } = string.Join(',', Headings) + "\n";

    /// <summary>The runs as text with line feeds.</summary>
    public static string Of(IEnumerable<SpotRuns> spots)
    {
        ArgumentNullException.ThrowIfNull(spots);
        using var stream = new MemoryStream();
        var options = new CsvWriterOptions { NewLine = "\n", FormatProvider = CultureInfo.InvariantCulture };
        using (var csv = CsvWriter.Create(stream, options, leaveOpen: true))
        {
            csv.WriteHeader([.. Headings]);
            foreach (SpotRuns spot in spots)
            {
                foreach ((Run run, int i) in spot.Runs.Select((run, i) => (run, i)))
                {
                    csv.WriteField(SpreadsheetText.Written(spot.Spot.Name));
                    csv.WriteField(i + 1);
                    csv.WriteField(SpreadsheetText.Written(run.Connection.FromName));
                    csv.WriteField(SpreadsheetText.Written(run.Connection.ToName));
                    csv.WriteField(run.Means switch { RunMeans.Existing => "existing", RunMeans.Patch => "short lead", _ => "new" });
                    csv.WriteField(SpreadsheetText.Written(run.Existing?.Name ?? run.Kind?.Name ?? ""));
                    csv.WriteField(SignalText.Of(run.Connection.Signal));
                    csv.WriteField(run.Connection.Signal.LineGbps, "0.00");
                    csv.WriteField(run.Carries switch { Carries.Yes => "yes", Carries.Borderline => "borderline", _ => "no" });
                    csv.WriteField(run.Route?.LengthMetres ?? 0, "0.00");
                    csv.WriteField(run.SlackMetres, "0.00");
                    csv.WriteField(run.BuyMetres, "0.00");
                    csv.WriteField(run.CoilMetres, "0.00");
                    csv.WriteField(run.Route?.Holes ?? 0);
                    csv.EndRecord();
                }
            }
        }

        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }
}
