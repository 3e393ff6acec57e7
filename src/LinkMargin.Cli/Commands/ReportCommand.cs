using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Maps;
using LinkMargin.Cli.Options;
using LinkMargin.Cli.Reporting;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Files.Bundles;
using LinkMargin.Files.Json;
using LinkMargin.Files.Problems;
using LinkMargin.Plots.Printing;
using LinkMargin.Reports.Handover;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Cli.Commands;

/// <summary>One report to hand over.</summary>
internal static class ReportCommand
{
    private const int MostLetters = 200;

    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Option<string?> spot = CommonOptions.Text("--spot", "SPOT", "Name of the spot to report on; default: the best one.");
        Option<string?> outFile = CommonOptions.Text("--out", "FILE", "The report, .html or .pdf; default: named after the house file, .html.");
        Option<string?> title = CommonOptions.Text("--title", "TEXT", "Title; default: made from the house's name.");
        Option<string?> client = CommonOptions.Text("--for", "NAME", "For whom the report is.");
        Option<string?> maker = CommonOptions.Text("--by", "NAME", "Who made the report.");
        Option<string?> logo = CommonOptions.Text("--logo", "FILE", "Your own picture above the title, PNG or JPEG.");
        Option<string?> paper = CommonOptions.Text("--paper", "SIZE", "Paper of a PDF: a4 or letter; default a4, letter for a house in feet.");
        Option<WrittenLength?> cell = LengthOption.Create("--cell", "Side of a cell of the maps; default 0.2 m.", MapLengths.Cell);
        Option<string?> data = CommonOptions.Text("--data", "DIR", "Also write the figures as CSV into a folder: seats.csv and budgets.csv.");
        Option<string?> bundle = CommonOptions.Text("--bundle", "FILE", "Also write everything into one archive (.zip) that every command opens in place of the house file.");
        Option<string?> measured = CommonOptions.Text("--measurements", "FILE", "With --bundle: the measurements to put into it.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<double?> confidence = ConfidenceOption.Create();
        Option<string[]?> occupied = OccupiedOption.Create();
        Option<string[]?> whatIf = WhatIfOption.Create();
        Option<string?> fitted = FittedOption.Create();
        var command = new Command("report", "Write one report to hand over: which spot, what to expect at each seat, what would help, how certain it is, "
            + "what to verify on site, the alternatives." + ExitCodes.Of("a seat does not pass at the spot"))
        {
            file, spot, outFile, title, client, maker, logo, paper, cell, data, bundle, measured, depth, confidence, occupied, whatIf, fitted,
        };
        command.SetAction(parse =>
        {
            string typed = parse.GetValue(file)!;
            string target = parse.GetValue(outFile) ?? $"{Path.GetFileNameWithoutExtension(typed)}-report.html";
            bool isPdf = ReportFiles.IsPdf(target), force = parse.GetValue(common.Force);
            var files = new ReportFiles(invocation, force);
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), typed, parse.GetValue(whatIf), parse.GetValue(fitted));
            HouseLoading.NeedSpotsAndSeats(loaded);
            House house = loaded.House;
            PaperSize sheet = PaperOf(parse.GetValue(paper), loaded);
            double cellMetres = parse.GetValue(cell)?.Metres(loaded.Unit) ?? HandoverComputation.UsualCellMetres;
            CellCount.RefuseTooMany(house.Levels, cellMetres);
            Spot? named = parse.GetValue(spot) is { } name ? NamedThing.One(spot.Name, "spot", name, house.Spots, s => s.Name) : null;
            var request = new HandoverRequest
            {
                Title = Checked(title), For = Checked(client), By = Checked(maker),
                Logo = parse.GetValue(logo) is { } picture ? files.ReadLogo(picture) : null,
            };
            if (parse.GetValue(measured) is not null && parse.GetValue(bundle) is null)
            {
                throw new CannotBeDoneException($"{measured.Name} says what goes into a bundle; add {bundle.Name}, or fit the house with 'linkmargin fit' and use --fitted");
            }

            invocation.Files.NeedWritable(target, force);
            invocation.Files.NeedWritable(parse.GetValue(bundle), force);
            Bundle? packed = parse.GetValue(bundle) is null
                ? null
                : files.Packed(typed, parse.GetValue(common.Materials), parse.GetValue(fitted), parse.GetValue(measured));
            var model = new LinkModel(house, ModelOption.Of(parse, depth), OccupiedOption.Read(parse.GetValue(occupied), house, invocation));
            HandoverFindings findings = new HandoverMaker(invocation, loaded, model, ConfidenceOption.Of(parse, confidence)).Make(ranking => Chosen(ranking, named), cellMetres);
            byte[] rendered = new HandoverReport(findings, request).Bytes(isPdf ? sheet : null);
            files.Write(target, rendered);
            IReadOnlyList<string> figures = parse.GetValue(data) is { } folder ? files.WriteData(folder, findings) : [];
            if (packed is { } content && parse.GetValue(bundle) is { } archive)
            {
                files.Write(archive, content with { Report = (Path.GetFileName(target), rendered) });
            }

            Say(invocation, findings, target, figures, parse.GetValue(bundle), parse.GetValue(common.Json));
            return findings.Chosen.PassesAll ? ExitCodes.Done : ExitCodes.SeatFails;

            string? Checked(Option<string?> option) => parse.GetValue(option) is not { } text ? null
                : text.Length > MostLetters ? throw new CannotBeDoneException(FormattableString.Invariant($"{option.Name}: this text has {text.Length} characters, more than the allowed {MostLetters}; shorten it"))
                : text;
        });
        return command;
    }

    private static PaperSize PaperOf(string? typed, LoadedHouse loaded) => typed?.ToLowerInvariant() switch
    {
        null => loaded.Lengths.InFeet ? PaperSize.Letter : PaperSize.A4,
        "a4" => PaperSize.A4,
        "letter" => PaperSize.Letter,
        _ => throw new CannotBeDoneException($"--paper {Quote.Of(typed)} is not a size of paper; {NearestWord.Advice(typed, [PaperSize.A4.Name, PaperSize.Letter.Name])}"),
    };

    private static SpotScore Chosen(Ranking ranking, Spot? named)
    {
        if (ranking.Scores.Count == 0)
        {
            throw new CannotBeDoneException("no seat plays a console at any spot of the house file, so there is nothing to report; change 'plays'");
        }

        return named is null ? ranking.Scores[0]
            : ranking.Scores.FirstOrDefault(score => score.Spot.Name == named.Name)
                ?? throw new CannotBeDoneException($"no seat plays a console at '{named.Name}', so there is nothing to report; choose another spot or change 'plays'");
    }

    private static void Say(Invocation invocation, HandoverFindings findings, string target, IReadOnlyList<string> figures, string? archive, bool asJson)
    {
        IReadOnlyList<string> verify = new CertaintySection(findings, null).Sentences;
        if (asJson)
        {
            invocation.Output.WriteLine(JsonText.Of(new ReportDocument(
                findings.House.Name,
                findings.Chosen.Spot.Name,
                findings.LevelOf(findings.Chosen.Spot.LevelIndex),
                findings.IsBest,
                findings.Chosen.SeatsPassing,
                findings.Chosen.Seats,
                verify,
                target,
                figures)
            {
                Bundle = archive,
                WhatIf = findings.Loaded.WhatIfOrNone,
                FittedToMeasurements = findings.Loaded.FittedToMeasurements,
            }));
            return;
        }

        findings.Loaded.WriteWhatIf(invocation.Output, invocation.Width);
        WordWrap.Write($"{target}: report on {findings.Named(findings.Chosen.Spot)} in {findings.House.Name}; {SeatWords.Passing(findings.Chosen)}.", invocation.Output, invocation.Width);
        foreach (string written in figures)
        {
            WordWrap.Write($"{written}: figures.", invocation.Output, invocation.Width);
        }

        if (archive is not null)
        {
            WordWrap.Write($"{archive}: house file, tables, report{(findings.Loaded.Fitted is null ? "" : ", fitted losses")}; every command opens it in place of the house file.", invocation.Output, invocation.Width);
        }

        if (verify.Count > 0)
        {
            WordWrap.Write("To verify on site:", invocation.Output, invocation.Width);
            for (int i = 0; i < verify.Count; i++)
            {
                WordWrap.WriteHanging(verify[i], invocation.Output, invocation.Width, FormattableString.Invariant($"{i + 1}. "), "   ");
            }
        }

        WordWrap.Write(Cautions.Estimates, invocation.Output, invocation.Width);
    }
}
