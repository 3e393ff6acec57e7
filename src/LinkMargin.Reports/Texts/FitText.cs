using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Measuring;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>A fit to readings, told as a careful experimenter would.</summary>
/// <param name="fit">The fit.</param>
internal sealed class FitText(HouseFit fit)
{
    private const int MostMeasurements = 12;
    private const int MostPairs = 6;

    // A shift of more than this many spreads is more than the table allows for.
    private const double ManySpreads = 2;

    // With more than this of its spread left, the readings say next to nothing of a material.
    private const double NothingLearned = 0.9;

    private FitStudy Study => fit.Study;

    private LossFit Fit => fit.Study.Fit;

    /// <summary>Writes it.</summary>
    public void Write(TextWriter output, int width)
    {
        int heard = fit.Measurements.Count(measurement => measurement.IsHeard);
        WordWrap.Write(
            $"{fit.House.Name}: {Count(fit.Measurements.Count, "reading", "readings")}{(heard < fit.Measurements.Count ? FormattableString.Invariant($", {fit.Measurements.Count - heard} of them of nothing heard,") : "")} with "
                + $"{string.Join(", ", Fit.Devices.Select(device => $"'{device.Name}'"))}; repeated lines of a link are one reading, the mean of their powers.",
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
            WordWrap.Write("The search for the best losses did not come to rest; do not use this fit.", output, width);
        }
    }

    private string VerdictText => Study.Goodness.Verdict switch
    {
        FitVerdict.Consistent => "The readings scatter about the fit as far as readings do: house and readings agree.",
        FitVerdict.SomeMeasurementsLookWrong => $"But for {Count(Study.Goodness.BadCount, "reading that looks", "readings that look")} wrong, named below and "
            + "left aside, house and readings agree.",
        FitVerdict.ModelLooksWrong => "The readings scatter more about the fit than readings and tables can explain. Look for a wall, door or floor that is "
            + "not as the house file says, for a level or place written down wrong, or for a device that was held in another way; do not use this fit before.",
        _ => "The readings scatter less than readings can: rows were copied, or made up.",
    };

    // The fitted house beside two laws that know nothing of it.
    private void WriteScatter(TextWriter output, int width)
    {
        FittedMaterial exponent = Study.FreeExponent.Fit.Materials[0];
        var table = new TextTable([new Column("residuals, rms dB") { Wraps = true }, new Column("in sample", Align.Right), new Column("left out", Align.Right)]);
        table.Add("the house, fitted", Rms(Study.RmsInSampleDb(Fit)), Rms(Study.RmsLeaveOneOutDb(Study.LeaveOneOutDb)));
        table.Add("free space, with the offsets", Rms(Study.RmsInSampleDb(Study.FreeSpace.Fit)), Rms(Study.RmsLeaveOneOutDb(Study.FreeSpace.LeaveOneOutDb)));
        table.Add(
            FormattableString.Invariant($"a law of distance, exponent {exponent.LossDb:0.0}"),
            Rms(Study.RmsInSampleDb(Study.FreeExponent.Fit)),
            Rms(Study.RmsLeaveOneOutDb(Study.FreeExponent.LeaveOneOutDb)));
        table.WriteTo(output, width);
        WordWrap.Write(
            FormattableString.Invariant($"Over {Study.UsedMeasurements} readings that were heard, look good and are not the only one of their devices. 'left out': each ")
                + "reading against a fit to the others, which is how well a place nobody has read is told.",
            output,
            width);
        double ours = Study.RmsLeaveOneOutDb(Study.LeaveOneOutDb), plain = Study.RmsLeaveOneOutDb(Study.FreeExponent.LeaveOneOutDb);
        if (ours > plain)
        {
            WordWrap.Write("A law of distance alone does better on readings it has not seen: the house as written tells less than it should.", output, width);
        }
    }

    private void WriteMeasurements(TextWriter output, int width)
    {
        int[] worst = [.. Enumerable.Range(0, fit.Measurements.Count).OrderByDescending(i => Math.Abs(Fit.Residuals[i].ResidualDb) / Fit.Residuals[i].Measurement.NoiseDb)];
        var table = new TextTable(
        [
            new Column("reading, worst first") { Wraps = true },
            new Column("line", Align.Right),
            new Column("read", Align.Right),
            new Column("fitted", Align.Right),
            new Column("residual", Align.Right),
            new Column("looks"),
        ]);
        foreach (int i in worst.Take(MostMeasurements))
        {
            Measurement measurement = fit.Measurements[i];
            FitResidual residual = Fit.Residuals[i];
            table.Add(
                $"{measurement.Transmitter.Name} to {measurement.Receiver.Name}{(Fit.Devices.Count > 1 ? $", {measurement.Devices}" : "")}",
                measurement.Lines.Count == 0 ? "" : FormattableString.Invariant($"{measurement.Lines[0]}{(measurement.Lines.Count > 1 ? "..." : "")}"),
                (measurement.IsHeard ? "" : "< ") + Tenths.Show(measurement.LevelDbm),
                Tenths.Show(residual.PredictedDbm),
                Tenths.Signed(Tenths.Of(residual.ResidualDb)),
                residual.LooksBad ? "wrong" : "");
        }

        table.WriteTo(output, width);
        if (worst.Length > MostMeasurements)
        {
            WordWrap.Write(FormattableString.Invariant($"and {worst.Length - MostMeasurements} more, all nearer; --json has them."), output, width);
        }
    }

    private void WriteMaterials(TextWriter output, int width)
    {
        var table = new TextTable(
        [
            new Column("material, dB") { Wraps = true },
            new Column("table", Align.Right),
            new Column("out by", Align.Right),
            new Column("fitted", Align.Right),
            new Column("out by", Align.Right),
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
                IsFarOff(m) ? "more than the table allows for: is it this material?" : "");
        }

        if (reported.Length > 0)
        {
            table.WriteTo(output, width);
            WordWrap.Write("'out by': one standard deviation of what all of the material in this house has in common.", output, width);
        }

        int others = Fit.Materials.Count - reported.Length;
        if (others > 0)
        {
            double most = Fit.Materials.Except(reported).Max(m => Math.Abs(m.LossDb - m.TableLossDb));
            WordWrap.Write(
                FormattableString.Invariant($"Of {(reported.Length == 0 ? "the" : "the other")} {Count(others, "material", "materials")} the readings say next to nothing: the tables stand, to within {Tenths.Show(most)} dB."),
                output,
                width);
        }
    }

    private static bool IsFarOff(FittedMaterial m) => Math.Abs(m.ShiftInSpreads) > ManySpreads;

    private void WriteDevices(TextWriter output, int width)
    {
        var table = new TextTable([new Column("devices") { Wraps = true }, new Column("readings", Align.Right), new Column("level with no loss, dBm", Align.Right), new Column("out by, dB", Align.Right)]);
        foreach (FittedDevice device in Fit.Devices)
        {
            table.Add(device.Name, FormattableString.Invariant($"{device.MeasurementCount}"), Tenths.Show(device.OffsetDbm), Tenths.Show(device.SpreadDb));
        }

        table.WriteTo(output, width);
        foreach (FittedDevice device in Fit.Devices.Where(device => device.MeasurementCount == 1))
        {
            WordWrap.Write($"'{device.Name}' appears once: its one reading goes into its own level and says nothing of the house.", output, width);
        }
    }

    private void WriteIndistinct(TextWriter output, int width)
    {
        if (Study.Indistinct.Count == 0)
        {
            return;
        }

        output.WriteLine();
        WordWrap.Write("Not told apart by these readings:", output, width);
        foreach (IndistinctPair pair in Study.Indistinct.Take(MostPairs))
        {
            WordWrap.WriteHanging(
                $"'{pair.First}' and '{pair.Second}': " + (pair.Correlation < 0 ? "what one loses more the other may lose less" : "both may be out the same way"),
                output,
                width,
                "* ",
                "  ");
        }
    }

    private static string Rms(double db) => double.IsFinite(db) ? Tenths.Show(db) : "-";

    private static string Count(int count, string one, string many) => FormattableString.Invariant($"{count} {(count == 1 ? one : many)}");
}
