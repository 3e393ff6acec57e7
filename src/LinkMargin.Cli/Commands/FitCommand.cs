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

/// <summary>Fits losses to levels measured in the real house.</summary>
internal static class FitCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = HouseArgument.Create();
        Argument<string?> measurements = new("MEASUREMENTS")
        {
            Description = "the file of measurements, such as measurements.csv",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<string?> template = CommonOptions.Text("--template", "FILE", "Write a measurements file to fill in: a line for each spot and seat.");
        Option<string?> into = CommonOptions.Text("--out", "FILE", "File for the fitted losses, for --fitted of other commands; default: not written.");
        Option<string?> picture = CommonOptions.Text("--plot", "FILE", "Picture (PNG) of measured against predicted levels, beside two simple models.");
        Option<bool> whereNext = CommonOptions.Flag(
            "--where-next", "Recommend the five measurements that would reduce the uncertainty of the decision most; --plot draws them.");
        Option<ModelDepth?> depth = ModelOption.Create();
        Option<string[]?> whatIf = WhatIfOption.Create();
        var command = new Command("fit", "Fit the losses of the materials to levels measured in the house, and report how good the fit is and what the measurements "
            + "cannot determine." + ExitCodes.Of())
        {
            file, measurements, template, into, picture, whereNext, whatIf, depth,
        };
        command.SetAction(parse =>
        {
            string typed = parse.GetValue(file)!;
            LoadedHouse loaded = HouseLoading.Read(invocation, LoadedTables.Read(invocation, parse, common), typed, parse.GetValue(whatIf), asMeasured: false);
            bool asJson = parse.GetValue(common.Json), force = parse.GetValue(common.Force);
            string? read = parse.GetValue(measurements);
            if (parse.GetValue(template) is { } blank)
            {
                if (read is not null)
                {
                    throw new CannotBeDoneException($"{template.Name} writes a file to fill in and fits nothing; omit {Quote.Of(read)}, or {template.Name}");
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
                throw new CannotBeDoneException($"name the measurements file, as in 'linkmargin fit {typed} measurements.csv', or write one to fill in with {template.Name} measurements.csv");
            }

            invocation.Files.NeedWritable(parse.GetValue(into), force);
            invocation.Files.NeedWritable(parse.GetValue(picture), force);
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
            "Put a 2.4 GHz transmitter at a spot, stand at a seat, turn around for a few seconds, and write the level shown (dBm) under 'received', "
                + "or 'not heard'. Write under 'device' what you measured with. Lines may be repeated, added and left empty; a position that is not a spot or seat "
                + "is given by coordinates ('linkmargin guide measuring' lists the columns).",
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
            WordWrap.Write($"{png}: measured against predicted levels.", invocation.Output, invocation.Width);
        }

        WordWrap.Write(
            fitted is null
                ? "The fit was not saved; add --out fitted.yaml to use it."
                : $"{fitted}: the fitted losses. Next: 'linkmargin compare {typed} --fitted {fitted}'.",
            invocation.Output,
            invocation.Width);
    }
}
