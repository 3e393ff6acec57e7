using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Measuring;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>The result of a fit to measurements.</summary>
/// <param name="fit">The fit.</param>
internal sealed class FitText(HouseFit fit)
{
    private const int MostMeasurements = 12;
    private const int MostPairs = 6;

    // A larger shift, in standard deviations, is more than the table's spread allows for.
    private const double ManySpreads = 2;

    // If more than this share of its spread remains, the measurements do not constrain a material.
    private const double NothingLearned = 0.9;

    private FitStudy Study => fit.Study;

    private LossFit Fit => fit.Study.Fit;

    /// <summary>Writes the result.</summary>
    public void Write(TextWriter output, int width)
    {
        int heard = fit.Measurements.Count(measurement => measurement.IsHeard);
        WordWrap.Write(
            $"{fit.House.Name}: {Count(fit.Measurements.Count, "measurement", "measurements")}{(heard < fit.Measurements.Count ? FormattableString.Invariant($", {fit.Measurements.Count - heard} of them 'not heard',") : "")} with "
                + $"{string.Join(", ", Fit.Devices.Select(device => $"'{device.Name}'"))}; repeated lines of a link count as one measurement, the mean of their powers.",
            output,
            width);
        output.WriteLine();
        WordWrap.Write(VerdictText, output, width);
        output.WriteLine();
        WriteScatter(output, width);
        output.WriteLine();
        WriteMeasurements(output, width);
        output.WriteLine();
        WriteMaterials(output, width);
        output.WriteLine();
        WriteDevices(output, width);
        WriteIndistinct(output, width);
        if (!Fit.HasConverged)
        {
            output.WriteLine();
            WordWrap.Write("The fit did not converge; do not use it.", output, width);
        }
    }

    private string VerdictText => Study.Goodness.Verdict switch
    {
        FitVerdict.Consistent => "The measurements agree with the house file: they scatter about the fit as much as measurements normally do.",
        FitVerdict.SomeMeasurementsLookWrong => $"{Study.Goodness.BadCount} of {Count(fit.Measurements.Count, "measurement", "measurements")} {(Study.Goodness.BadCount == 1 ? "looks wrong and is" : "look wrong and are")} ignored (see below). The "
            + "others agree with the house file.",
        FitVerdict.ModelLooksWrong => "The measurements scatter more about the fit than measurement noise and the tables explain. Look for a wall, door or floor that "
            + "differs from the house file, a level or position written down wrong, or a device that was held differently. Do not use this fit before that is settled.",
        _ => "The measurements scatter less than real ones do: rows were copied or invented.",
    };

    // Compares the fitted house with two distance laws that do not use the plan.
    private void WriteScatter(TextWriter output, int width)
    {
        FittedMaterial exponent = Study.FreeExponent.Fit.Materials[0];
        var table = new TextTable([new Column("residuals, rms (dB)") { Wraps = true }, new Column("in sample", Align.Right), new Column("leave-\none-out", Align.Right)]);
        table.Add("fitted house", Rms(Study.RmsInSampleDb(Fit)), Rms(Study.RmsLeaveOneOutDb(Study.LeaveOneOutDb)));
        table.Add("free space with offsets", Rms(Study.RmsInSampleDb(Study.FreeSpace.Fit)), Rms(Study.RmsLeaveOneOutDb(Study.FreeSpace.LeaveOneOutDb)));
        table.Add(
            FormattableString.Invariant($"distance power law, exponent {exponent.LossDb:0.0}"),
            Rms(Study.RmsInSampleDb(Study.FreeExponent.Fit)),
            Rms(Study.RmsLeaveOneOutDb(Study.FreeExponent.LeaveOneOutDb)));
        table.WriteTo(output, width);
        WordWrap.Write(
            FormattableString.Invariant($"Over {Study.UsedMeasurements} measurements: heard, not ignored, and not the only one of their devices. Leave-one-out: each ")
                + "measurement against a fit to the others, which shows how well a position that was not measured is predicted.",
            output,
            width);
        double ours = Study.RmsLeaveOneOutDb(Study.LeaveOneOutDb), plain = Study.RmsLeaveOneOutDb(Study.FreeExponent.LeaveOneOutDb);
        if (ours > plain)
        {
            WordWrap.Write("A distance power law predicts unseen measurements better than the house file does: check the house file.", output, width);
        }
    }

    private void WriteMeasurements(TextWriter output, int width)
    {
        int[] byResidual = [.. Enumerable.Range(0, fit.Measurements.Count).OrderByDescending(i => Math.Abs(Fit.Residuals[i].ResidualDb) / Fit.Residuals[i].Measurement.NoiseDb)];
        var table = new TextTable(
        [
            new Column("measurement, worst first") { Wraps = true },
            new Column("line", Align.Right),
            new Column("measured\ndBm", Align.Right),
            new Column("fitted\ndBm", Align.Right),
            new Column("residual\ndB", Align.Right),
            new Column(""),
        ]);
        foreach (int i in byResidual.Take(MostMeasurements))
        {
            Measurement measurement = fit.Measurements[i];
            FitResidual residual = Fit.Residuals[i];
            table.Add(
                $"{measurement.Transmitter.Name} to {measurement.Receiver.Name}{(Fit.Devices.Count > 1 ? $", {measurement.Devices}" : "")}",
                measurement.Lines.Count == 0 ? "" : FormattableString.Invariant($"{measurement.Lines[0]}{(measurement.Lines.Count > 1 ? "..." : "")}"),
                (measurement.IsHeard ? "" : "< ") + Tenths.Show(measurement.LevelDbm),
                Tenths.Show(residual.PredictedDbm),
                Tenths.Signed(Tenths.Of(residual.ResidualDb)),
                residual.LooksBad ? "ignored" : "");
        }

        table.WriteTo(output, width);
        if (byResidual.Length > MostMeasurements)
        {
            WordWrap.Write(FormattableString.Invariant($"and {byResidual.Length - MostMeasurements} more with smaller residuals; --json lists all."), output, width);
        }
    }

    private void WriteMaterials(TextWriter output, int width)
    {
        var table = new TextTable(
        [
            new Column("material (dB)") { Wraps = true },
            new Column("table", Align.Right),
            new Column("±", Align.Right),
            new Column("fitted", Align.Right),
            new Column("±", Align.Right),
            new Column("") { Wraps = true },
        ]);
        FittedMaterial[] reported = [.. Fit.Materials.Where(m => m.SpreadLeft <= NothingLearned || IsFarOff(m)).OrderBy(m => m.SpreadLeft)];
        foreach (FittedMaterial m in reported)
        {
            table.Add(
                m.Name,
                Tenths.Show(m.TableLossDb),
                Tenths.Show(m.TableSpreadDb),
                Tenths.Show(m.LossDb),
                Tenths.Show(m.SpreadDb),
                IsFarOff(m) ? "outside the table's range: is it this material?" : "");
        }

        if (reported.Length > 0)
        {
            table.WriteTo(output, width);
            WordWrap.Write("±: one standard deviation, common to all of this material in the house.", output, width);
        }

        int others = Fit.Materials.Count - reported.Length;
        if (others > 0)
        {
            double most = Fit.Materials.Except(reported).Max(m => Math.Abs(m.LossDb - m.TableLossDb));
            WordWrap.Write(
                FormattableString.Invariant($"These measurements do not constrain {(reported.Length == 0 ? "the" : "the other")} {Count(others, "material", "materials")}; table values are kept within {Tenths.Show(most)} dB."),
                output,
                width);
        }
    }

    private static bool IsFarOff(FittedMaterial m) => Math.Abs(m.ShiftInSpreads) > ManySpreads;

    private void WriteDevices(TextWriter output, int width)
    {
        var table = new TextTable([new Column("devices") { Wraps = true }, new Column("measurements", Align.Right), new Column("level without loss (dBm)", Align.Right), new Column("± dB", Align.Right)]);
        foreach (FittedDevice device in Fit.Devices)
        {
            table.Add(device.Name, FormattableString.Invariant($"{device.MeasurementCount}"), Tenths.Show(device.OffsetDbm), Tenths.Show(device.SpreadDb));
        }

        table.WriteTo(output, width);
        foreach (FittedDevice device in Fit.Devices.Where(device => device.MeasurementCount == 1))
        {
            WordWrap.Write($"'{device.Name}' appears once: its measurement only sets its own offset and says nothing about the house.", output, width);
        }
    }

    private void WriteIndistinct(TextWriter output, int width)
    {
        if (Study.Indistinct.Count == 0)
        {
            return;
        }

        output.WriteLine();
        WordWrap.Write("These measurements cannot separate:", output, width);
        foreach (IndistinctPair pair in Study.Indistinct.Take(MostPairs))
        {
            WordWrap.WriteHanging(
                $"'{pair.First}' and '{pair.Second}': " + (pair.Correlation < 0 ? "one may lose more and the other less" : "both may be off in the same direction"),
                output,
                width,
                "* ",
                "  ");
        }
    }

    private static string Rms(double db) => double.IsFinite(db) ? Tenths.Show(db) : "-";

    private static string Count(int count, string one, string many) => FormattableString.Invariant($"{count} {(count == 1 ? one : many)}");
}
