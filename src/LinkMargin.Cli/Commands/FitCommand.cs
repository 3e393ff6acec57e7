using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Measuring;
using LinkMargin.Files.Json;
using LinkMargin.Files.Measurements;
using LinkMargin.Files.Problems;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Texts;

namespace LinkMargin.Cli.Commands;

/// <summary>Losses fitted to levels read in the real house.</summary>
internal static class FitCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Argument<string?> measurements = new("READINGS")
        {
            Description = "the file of readings, such as readings.csv",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<string?> template = CommonOptions.Text("--template", "FILE", "Write a file of readings to fill in: a line for each spot and seat.");
        Option<string?> into = CommonOptions.Text("--out", "FILE", "Where the fitted losses go, for other commands to take; nowhere where it is left out.");
        Option<string?> picture = CommonOptions.Text("--plot", "FILE", "A picture (PNG) of what was read against what is predicted, beside two plain laws.");
        Option<bool> whereNext = CommonOptions.Flag(
            "--where-next", "The five readings that would most reduce the doubt about which spot to choose, before any reading or after some; --plot draws them.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<string[]?> whatIf = WhatIfOption.Create();
        var command = new Command("fit", "Losses of the materials of a house, fitted to levels that were read in it; with how well that goes and what the readings "
            + "cannot tell." + ExitCodes.Of())
        {
            file, measurements, template, into, picture, whereNext, whatIf, depth,
        };
        command.SetAction(parse =>
        {
            string typed = parse.GetValue(file)!;
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), typed, parse.GetValue(whatIf));
            bool asJson = parse.GetValue(common.Json), force = parse.GetValue(common.Force);
            string? read = parse.GetValue(measurements);
            if (parse.GetValue(template) is { } blank)
            {
                if (read is not null)
                {
                    throw new CannotBeDoneException($"{template.Name} writes a file to fill in and fits nothing; leave out {Quote.Of(read)}, or {template.Name}");
                }

                WriteTemplate(invocation, loaded, typed, blank, asJson, force);
                return ExitCodes.Done;
            }

            if (read is null && parse.GetValue(whereNext))
            {
                WhereNext.Tell(invocation, loaded, null, ModelOption.Of(parse, depth), parse.GetValue(picture), asJson, force);
                return ExitCodes.Done;
            }

            if (read is null)
            {
                throw new CannotBeDoneException($"name the file of readings, as in 'linkmargin fit {typed} readings.csv', or write one to fill in with {template.Name} readings.csv");
            }

            MeasurementsParseResult result = MeasurementsFile.Read(invocation.Files.ToRead(read), loaded.House, loaded.Unit);
            ProblemLines.Write(result.Problems, invocation.Error, invocation.Width);
            HouseFit fit = HouseFit.Of(
                new LinkModel(loaded.House, ModelOption.Of(parse, depth)),
                loaded.Spreads,
                result.Measurements ?? throw new CannotBeDoneException(ProblemLines.FixFirst(read, result.Problems)));
            if (parse.GetValue(into) is { } fitted)
            {
                invocation.Files.Write(fitted, FittedFile.Text(fit.Losses), force);
            }

            if (parse.GetValue(whereNext))
            {
                WhereNext.Tell(invocation, loaded, fit, ModelOption.Of(parse, depth), parse.GetValue(picture), asJson, force);
                return ExitCodes.Done;
            }

            if (parse.GetValue(picture) is { } png)
            {
                invocation.Files.Write(png, FitPictures.Render(fit), force);
            }

            Tell(invocation, loaded, fit, typed, parse.GetValue(into), parse.GetValue(picture), asJson);
            return ExitCodes.Done;
        });
        return command;
    }

    private static void WriteTemplate(Invocation invocation, LoadedHouse loaded, string typed, string blank, bool asJson, bool force)
    {
        HouseLoading.NeedSpotsAndSeats(loaded);
        using var lines = new MemoryStream();
        MeasurementsTemplate.Write(loaded.House, lines);
        invocation.Files.Write(blank, lines.ToArray(), force);
        if (asJson)
        {
            invocation.Output.WriteLine(JsonText.Of(new TemplateDocument(blank)));
            return;
        }

        WordWrap.Write($"{blank}: a line for each spot and seat of {loaded.House.Name}.", invocation.Output, invocation.Width);
        WordWrap.Write(
            "Put something that sends on 2.4 GHz at a spot, stand at a seat, turn about for some seconds, and write the level shown (in dBm) under 'received', "
                + "or 'not heard'; name under 'device' what it was read with. Lines may be repeated, added and left empty; a place that is no spot or seat "
                + "is given by coordinates (README.md lists the columns).",
            invocation.Output,
            invocation.Width);
        WordWrap.Write($"Next: 'linkmargin fit {typed} {blank} --out fitted.yaml'.", invocation.Output, invocation.Width);
    }

    private static void Tell(Invocation invocation, LoadedHouse loaded, HouseFit fit, string typed, string? fitted, string? png, bool asJson)
    {
        if (asJson)
        {
            invocation.Output.WriteLine(JsonText.Of(FitDocument.Of(fit, fitted, png) with { WhatIf = loaded.WhatIfOrNone }));
            return;
        }

        loaded.WriteWhatIf(invocation.Output, invocation.Width);
        new FitText(fit).Write(invocation.Output, invocation.Width);
        invocation.Output.WriteLine();
        if (png is not null)
        {
            WordWrap.Write($"{png}: what was read against what is predicted.", invocation.Output, invocation.Width);
        }

        WordWrap.Write(
            fitted is null
                ? "Nothing is kept of this fit; add --out fitted.yaml to use it."
                : $"{fitted}: the fitted losses. Next: 'linkmargin compare {typed} --fitted {fitted}'.",
            invocation.Output,
            invocation.Width);
    }
}
