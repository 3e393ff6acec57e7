using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Tokens;

namespace LinkMargin.Cli.Tests.Commands;

/// <summary>The report to hand over, as page and as PDF, through the real program. PdfPig, an independent reader, opens the PDFs.</summary>
public sealed partial class ReportCommandTests : IDisposable
{
    // The direct model is enough for what stands in a report, and quick.
    private static readonly string[] Quick = ["--model", "direct", "--cell", "0.5"];

    private readonly ScratchFolder folder = new();

    public ReportCommandTests() => folder.Put("house.yaml", SampleFile.Text);

    public void Dispose() => folder.Dispose();

    /// <summary>What compare says of the same house is what the report says: the best spot, and which seats pass.</summary>
    [Fact]
    public void The_page_recommends_what_compare_chooses_and_needs_nothing_but_itself()
    {
        CommandRun run = Report("--out", "r.html", "--for", "A Client", "--by", "An Installer", "--title", "Our report");
        JsonElement compared = CommandRun.In(folder.Path, "compare", "house.yaml", "--model", "direct", "--json").Json;
        JsonElement best = compared.GetProperty("ranking")[0];
        string page = File.ReadAllText(folder.PathOf("r.html")), spot = best.GetProperty("spot").GetString()!;
        Assert.Equal(1, run.ExitCode); // the bench requires 60 dB
        Assert.Contains($"Put the console at &#39;{spot}&#39; (level {best.GetProperty("level").GetString()})", page, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"{best.GetProperty("seatsPassing").GetInt32()} of 3 seats pass"), page, StringComparison.Ordinal);
        Assert.Contains("For A Client", page, StringComparison.Ordinal);
        Assert.Contains("By An Installer", page, StringComparison.Ordinal);
        Assert.Contains("<h1>Our report</h1>", page, StringComparison.Ordinal);

        // Nothing is fetched: no address but names of XML namespaces, and a policy that forbids it.
        Assert.All(Addresses().Matches(page).Select(match => match.Value), address => Assert.StartsWith("http://www.w3.org/", address, StringComparison.Ordinal));
        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
        Assert.DoesNotContain("src=\"http", page, StringComparison.OrdinalIgnoreCase);
        string[] order = ["Recommendation", "What to expect at each seat", "Explore the map", "What would help", "How certain", "What to verify on site", "The alternatives", "What was assumed", "Before work begins", "Agreed", "Appendix: link budgets", "Appendix: maps", "Appendix: paths"];
        int[] places = [.. order.Select(heading => page.IndexOf($">{heading}", StringComparison.Ordinal))];
        Assert.Equal(places.Order(), places);
        Assert.DoesNotContain(-1, places);
    }

    /// <summary>The values in the page are those of the map's own CSV, cell by cell: rounded down to a tenth as everywhere.</summary>
    [Fact]
    public void The_map_of_the_page_holds_the_values_of_the_map_command()
    {
        Report("--out", "r.html");
        CommandRun.In(folder.Path, "map", "house.yaml", "--spot", "den rack", "--level", "loft", "--cell", "0.5", "--model", "direct", "--csv", "--out", "maps");
        Dictionary<(double X, double Y), double> expected = File.ReadLines(Directory.GetFiles(folder.PathOf("maps"), "*.csv").Single()).Skip(1)
            .Select(line => line.Split(',')).ToDictionary(cell => (Number(cell[2]), Number(cell[3])), cell => Number(cell[6]));
        JsonElement data = JsonDocument.Parse(Data().Match(File.ReadAllText(folder.PathOf("r.html"))).Groups[1].Value).RootElement;
        JsonElement field = data.GetProperty("fields").EnumerateArray().Single(f => f.GetProperty("spot").GetInt32() == 0 && f.GetProperty("level").GetInt32() == 1);
        byte[] bytes = field.GetProperty("tenths").GetBytesFromBase64();
        int columns = field.GetProperty("columns").GetInt32(), compared = 0;
        double cell = field.GetProperty("cell").GetDouble(), left = field.GetProperty("origin")[0].GetDouble(), bottom = field.GetProperty("origin")[1].GetDouble();
        foreach (((double x, double y), double db) in expected)
        {
            int i = (int)Math.Round((x - left - (cell / 2)) / cell) + (columns * (int)Math.Round((y - bottom - (cell / 2)) / cell));
            // The CSV has four decimals, so a figure at the edge of a tenth may have been rounded over it there.
            Assert.InRange(BitConverter.ToInt16(bytes, 2 * i), Math.Floor((10 * db) - 1e-3), Math.Floor((10 * db) + 1e-3));
            compared++;
        }

        Assert.True(compared > 100);
    }

    [Fact]
    public void The_page_is_well_formed_in_its_pictures_and_its_ids_are_its_own()
    {
        Report("--out", "r.html");
        string page = File.ReadAllText(folder.PathOf("r.html"));
        string[] pictures = [.. Pictures().Matches(page).Select(match => match.Value)];
        Assert.True(pictures.Length >= 4);
        Assert.All(pictures, svg => new XmlDocument().LoadXml(svg));
        string[] ids = [.. Ids().Matches(page).Select(match => match.Groups[1].Value)];
        Assert.Equal(ids.Distinct().Count(), ids.Length);
        Assert.All(References().Matches(page).Select(match => match.Groups[1].Value), id => Assert.Contains(id, ids));
        Assert.All(pictures, svg => Assert.DoesNotMatch(ListEnd(), svg));
    }

    [Theory]
    [InlineData("a4", 595, 842)]
    [InlineData("letter", 612, 792)]
    public void The_PDF_has_text_pictures_of_lines_and_only_the_letters_it_uses(string paper, int width, int height)
    {
        Report("--out", "r.pdf", "--paper", paper, "--for", "A Client");
        byte[] bytes = File.ReadAllBytes(folder.PathOf("r.pdf"));
        using PdfDocument pdf = PdfDocument.Open(bytes);
        Assert.Equal("Test Cottage: where to put the console", pdf.Information.Title);
        string[] pages = [.. pdf.GetPages().Select(page => string.Join(' ', page.GetWords().Select(word => word.Text)))];
        Assert.Contains("Put the console at", pages[0], StringComparison.Ordinal);
        Assert.Contains("For A Client", pages[0], StringComparison.Ordinal);
        Assert.Contains("What to verify on site", string.Join(' ', pages), StringComparison.Ordinal);
        Assert.All(pages, (text, i) => Assert.Contains(FormattableString.Invariant($"page {i + 1} of {pages.Length}"), text, StringComparison.Ordinal));

        // Names in pictures are text as well: rooms are nowhere else.
        Assert.Contains("studio", string.Join(' ', pages), StringComparison.Ordinal);
        Page first = pdf.GetPage(1);
        Assert.Equal((width, height), ((int)Math.Round(first.Width), (int)Math.Round(first.Height)));
        Assert.Empty(first.GetImages());
        Assert.All(pdf.GetPages(), page => Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Left, 0, page.Width)));

        // A whole face has 300 kB; both together in what they use have less than one.
        StreamToken[] fonts = [.. Fonts(pdf)];
        Assert.Equal(2, fonts.Length);
        Assert.True(fonts.Sum(font => font.Data.Length) < 120_000, $"{fonts.Sum(font => font.Data.Length)} bytes of fonts");
    }

    [Fact]
    public void Names_with_markup_are_text_and_letters_that_are_missing_are_said_by_number()
    {
        folder.Put("house.yaml", SampleFile.Text
            .Replace("house: Test Cottage", "house: \"<script>alert(1)</script> & co\"", StringComparison.Ordinal)
            .Replace("name: sofa", "name: \"</script><img src=x onerror=alert(2)>\"", StringComparison.Ordinal)
            .Replace("name: studio", "name: \"\u6e38\u620f \u03a9\"", StringComparison.Ordinal));
        Report("--out", "r.html");
        Report("--out", "r.pdf", "--for", "\U0001F3AE");
        string page = File.ReadAllText(folder.PathOf("r.html"));
        Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<img src=x", page, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; co", page, StringComparison.Ordinal);
        Assert.Equal(2, Scripts().Count(page)); // the values and the program's own
        using PdfDocument pdf = PdfDocument.Open(File.ReadAllBytes(folder.PathOf("r.pdf")));
        string text = string.Join(' ', pdf.GetPages().SelectMany(one => one.GetWords()).Select(word => word.Text));
        Assert.Contains("<script>alert(1)</script>", text, StringComparison.Ordinal);
        Assert.Contains("[U+6E38][U+620F]", text, StringComparison.Ordinal);
        Assert.Contains("[U+1F3AE]", text, StringComparison.Ordinal);
        Assert.Contains("\u03a9", text, StringComparison.Ordinal); // Greek is in the face
    }

    [Theory]
    [InlineData("--out r.txt", "a report is a page or a PDF; end the name with .html or .pdf")]
    [InlineData("--out missing/r.html", "its folder does not exist")]
    [InlineData("--spot attic", "there is no spot 'attic'")]
    [InlineData("--paper a5", "--paper 'a5' is not a size of paper")]
    [InlineData("--logo house.yaml", "this is not a PNG or JPEG")]
    [InlineData("--logo none.png", "there is no such file")]
    [InlineData("--logo huge.png", "more than the allowed 4096")]
    [InlineData("--fitted house.yaml", "")]
    [InlineData("--cell 0.001", "--cell '0.001' is 0.001 m, but")]
    public void What_cannot_be_done_is_said_and_nothing_is_written(string options, string sentence)
    {
        File.WriteAllBytes(folder.PathOf("huge.png"), new byte[5 * 1024 * 1024]);
        string[] before = [.. folder.Files];
        CommandRun run = CommandRun.In(folder.Path, ["report", "house.yaml", .. options.Contains("--cell", StringComparison.Ordinal) ? ["--model", "direct"] : Quick, .. options.Split(' ')]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(sentence, run.ErrorUnwrapped, StringComparison.Ordinal);
        Assert.Empty(run.Output);
        Assert.Equal(before, folder.Files);
    }

    [Fact]
    public void A_house_without_seats_has_nothing_to_report()
    {
        folder.Put("house.yaml", SampleFile.Text[..SampleFile.Text.IndexOf("seats:", StringComparison.Ordinal)]);
        CommandRun run = Report();
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("linkmargin: the house has no seat; add one under 'seats:' in the house file\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_logo_stands_in_both_and_the_program_replaces_only_its_own_reports()
    {
        CommandRun.In(folder.Path, "check", "house.yaml");
        Report("--out", "r.pdf", "--logo", "house-plan.png");
        Report("--out", "r.html", "--logo", "house-plan.png");
        Assert.Contains("src=\"data:image/png;base64,", File.ReadAllText(folder.PathOf("r.html")), StringComparison.Ordinal);
        using (PdfDocument pdf = PdfDocument.Open(File.ReadAllBytes(folder.PathOf("r.pdf"))))
        {
            Assert.Single(pdf.GetPage(1).GetImages());
        }

        Assert.Equal(1, Report("--out", "r.pdf").ExitCode);
        Assert.Equal(1, Report("--out", "r.html").ExitCode);
        folder.Put("r.html", "<!DOCTYPE html><title>mine</title>");
        Assert.Equal(2, Report("--out", "r.html").ExitCode);
        Assert.Equal("<!DOCTYPE html><title>mine</title>", File.ReadAllText(folder.PathOf("r.html")));
    }

    [Fact]
    public void The_figures_in_the_folder_are_those_of_compare()
    {
        CommandRun run = Report("--data", "figures", "--json");
        Assert.Equal(["figures/budgets.csv", "figures/seats.csv"], run.Json.GetProperty("data").EnumerateArray().Select(file => file.GetString()!.Replace('\\', '/')).Order(StringComparer.Ordinal));
        CommandRun compared = CommandRun.In(folder.Path, "compare", "house.yaml", "--model", "direct", "--json", "--csv", "compared.csv");
        Assert.Equal(File.ReadAllText(folder.PathOf("compared.csv")), File.ReadAllText(folder.PathOf("figures/seats.csv")));
        JsonElement[] links = [.. compared.Json.GetProperty("links").EnumerateArray()];
        string[][] rows = [.. File.ReadLines(folder.PathOf("compared.csv")).Select(line => line.Split(','))];
        Assert.Equal("rank,spot,spotLevel,seat,seatLevel,requiredDb,medianDb,marginAtConfidenceDb,headroomDb,probabilityPasses,passes,usedDays", string.Join(',', rows[0]));
        Assert.Equal(links.Length, rows.Length - 1);
        foreach (string[] row in rows.Skip(1))
        {
            JsonElement link = links.Single(one => one.GetProperty("spot").GetString() == row[1] && one.GetProperty("seat").GetString() == row[3]);
            Assert.Equal(link.GetProperty("marginAtConfidenceDb").GetDouble(), Number(row[7]), 4);
            Assert.Equal(link.GetProperty("probabilityPasses").GetDouble(), Number(row[9]), 4);
            Assert.Equal(link.GetProperty("passes").GetBoolean(), row[10] == "true");
        }

        string[][] budgets = [.. File.ReadLines(folder.PathOf("figures/budgets.csv")).Skip(1).Select(line => line.Split(','))];
        Assert.Equal(2 * links.Length, budgets.Length);
        Assert.All(budgets, row => Assert.Equal(Number(row[9]), Number(row[4]) + Number(row[5]) - Number(row[6]) - Number(row[7]) - Number(row[8]), 3));
    }

    [Fact]
    public void A_house_in_feet_gets_feet()
    {
        folder.Put("house.yaml", SampleFile.Text.Replace("units: m", "units: m\n", StringComparison.Ordinal));
        folder.Put("feet.yaml", InFeet());
        CommandRun.In(folder.Path, ["report", "feet.yaml", .. Quick, "--out", "r.pdf"]);
        using PdfDocument pdf = PdfDocument.Open(File.ReadAllBytes(folder.PathOf("r.pdf")));
        string text = string.Join(' ', pdf.GetPages().SelectMany(one => one.GetWords()).Select(word => word.Text));
        Assert.Equal(612, (int)Math.Round(pdf.GetPage(1).Width)); // letter
        Assert.DoesNotMatch(@"\d m\b", text);
        Assert.Matches(@"\dft", text);
    }

    /// <summary>A client has no terminal: what can be asked for is said in words. The houses have displays, one spot, and walls alone.</summary>
    [Theory]
    [InlineData("wired.yaml")]
    [InlineData("one.yaml")]
    [InlineData("house.yaml")]
    public void No_command_is_in_a_report(string file)
    {
        folder.Put("wired.yaml", SampleFile.Modest + """
            fixtures: [{name: panel, level: den, box: [3, 0.05, 3.9, 0.1], from: 0.8, to: 1.6, material: flat-screen}]
            displays: [{name: screen, level: den, at: [3.5, 0.2, 1], signal: 4k120 4:4:4 12 bit}]

            """);
        folder.Put("one.yaml", InFeet().Replace("  - {name: rack, level: ground, at: [24, 14, 4]}\n", "", StringComparison.Ordinal));
        CommandRun.In(folder.Path, ["report", file, .. Quick, "--out", "r.html"]);
        string page = File.ReadAllText(folder.PathOf("r.html"));
        Assert.Equal(file == "wired.yaml", page.Contains("Ask for the pull sheet", StringComparison.Ordinal));
        Assert.Equal(file == "one.yaml", page.Contains("ask for a search", StringComparison.Ordinal));
        Assert.DoesNotMatch(@"linkmargin \w|--[a-z]+ ", Styles().Replace(page, ""));
    }

    private static string InFeet() => """
        house: Foot House
        units: ft
        levels:
          - name: ground
            height: 8
            outer: brick-215
            inner: drywall-stud
            rooms:
              - {name: den, corner: [0, 0], size: [13, 16]}
              - {name: hall, corner: [13, 0], size: [13, 16]}
        spots:
          - {name: shelf, level: ground, at: [2, 2, 4]}
          - {name: rack, level: ground, at: [24, 14, 4]}
        seats:
          - {name: sofa, level: ground, at: [10, 7], hands: 2, facing: east}
        """;

    private static IEnumerable<StreamToken> Fonts(PdfDocument pdf)
    {
        HashSet<IndirectReference> seen = [];
        foreach (IndirectReference reference in pdf.Structure.CrossReferenceTable.ObjectOffsets.Keys)
        {
            if (pdf.Structure.GetObject(reference).Data is StreamToken stream && stream.StreamDictionary.ContainsKey(NameToken.Create("Length1")) && seen.Add(reference))
            {
                yield return stream;
            }
        }
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private CommandRun Report(params string[] more) => CommandRun.In(folder.Path, ["report", "house.yaml", .. Quick, .. more]);

    [GeneratedRegex("https?://[^\"'\\s<]+")]
    private static partial Regex Addresses();

    [GeneratedRegex("id=\"explore-data\">(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Data();

    [GeneratedRegex("<svg.*?</svg>", RegexOptions.Singleline)]
    private static partial Regex Pictures();

    [GeneratedRegex("\\bid=\"([^\"]+)\"")]
    private static partial Regex Ids();

    [GeneratedRegex("url\\(#([^)]+)\\)")]
    private static partial Regex References();

    [GeneratedRegex(", *\"[ />]")]
    private static partial Regex ListEnd();

    [GeneratedRegex(@"<(style|script).*?</\1>", RegexOptions.Singleline)]
    private static partial Regex Styles();

    [GeneratedRegex("<script")]
    private static partial Regex Scripts();
}
