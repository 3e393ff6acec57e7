using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Files.Bundles;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Writing;
using LinkMargin.Plots.Printing;
using LinkMargin.Reports.Handover;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Reporting;

/// <summary>Writes a report and the figures behind it.</summary>
/// <param name="invocation">Where the command writes and where relative paths start.</param>
/// <param name="force">Whether files that this program did not write may be replaced.</param>
internal sealed class ReportFiles(Invocation invocation, bool force)
{
    private const string MarginsFile = "seats.csv", BudgetsFile = "budgets.csv", RunsFile = "runs.csv";

    /// <summary>Whether a file name is that of a PDF; refuses one that is neither PDF nor HTML.</summary>
    public static bool IsPdf(string file) => Path.GetExtension(file).ToLowerInvariant() switch
    {
        ".pdf" => true,
        ".html" or ".htm" => false,
        _ => throw new CannotBeDoneException($"--out {Quote.Of(file)}: a report is a page or a PDF; end the name with .html or .pdf"),
    };

    /// <summary>Writes the report.</summary>
    public void Write(string file, byte[] content) => invocation.Files.Write(file, content, force);

    /// <summary>Writes a bundle.</summary>
    public void Write(string file, Bundle bundle)
    {
        using var bytes = new MemoryStream();
        bundle.Write(bytes);
        Write(file, bytes.ToArray());
    }

    /// <summary>What goes into a bundle beside the report; anything not given is taken from the opened bundle.</summary>
    /// <param name="house">The house file or bundle, as typed.</param>
    /// <param name="tables">The folder of tables; null for those of the bundle, or the built-in ones.</param>
    /// <param name="fitted">The file of fitted losses; null for that of the bundle, or none.</param>
    /// <param name="measurements">The file of measurements; null for that of the bundle, or none.</param>
    public Bundle Packed(string house, string? tables, string? fitted, string? measurements)
    {
        Bundle? opened = OpenedBundle.Of(invocation, house);
        string name = Path.GetFileName(house);
        return new Bundle
        {
            HouseName = opened?.HouseName ?? (Path.GetExtension(name).ToLowerInvariant() is ".yaml" or ".yml" ? name : $"{name}.yaml"),
            House = opened?.House ?? Bytes(house),
            Tables = tables is not null ? MaterialTablesFile.Texts(invocation.Files.ToReadFolder(tables, MaterialTablesFile.FileNames))
                : opened is { Tables.Count: > 0 } ? opened.Tables
                : MaterialTablesFile.Texts(null),
            Fitted = fitted is not null ? Bytes(fitted) : opened?.Fitted,
            Measurements = measurements is not null ? Bytes(measurements) : opened?.Measurements,
        };
    }

    // All files but the measurements were read once before.
    private byte[] Bytes(string typed)
    {
        try
        {
            string path = invocation.Files.ToRead(typed);
            return new FileInfo(path) is { Exists: true, Length: > Bundle.MostBytes }
                ? throw new CannotBeDoneException(FormattableString.Invariant($"{Quote.Of(typed)} is larger than the allowed {Bundle.MostBytes / 1024} KiB"))
                : File.ReadAllBytes(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new CannotBeDoneException($"{Quote.Of(typed)} cannot be read: {Quote.Sentence(fault.Message)}");
        }
    }

    /// <summary>Writes the figures for a spreadsheet.</summary>
    /// <returns>The files.</returns>
    public IReadOnlyList<string> WriteData(string folder, HandoverFindings findings)
    {
        invocation.Files.MakeFolder(folder);
        string margins = Path.Combine(folder, MarginsFile), budgets = Path.Combine(folder, BudgetsFile);
        invocation.Files.Write(margins, stream => LinksCsv.WriteMargins(findings.House, findings.Ranking, findings.Uncertainty, stream), force);
        invocation.Files.Write(budgets, stream => LinksCsv.WriteBudgets(findings.Ranking, stream), force);
        if (findings.Runs.Count == 0)
        {
            return [margins, budgets];
        }

        string runs = Path.Combine(folder, RunsFile);
        invocation.Files.Write(runs, RunsCsv.Of(findings.Runs), force);
        return [margins, budgets, runs];
    }

    /// <summary>Reads the user's logo.</summary>
    public PhotoPicture ReadLogo(string typed)
    {
        string path = invocation.Files.ToRead(typed);
        byte[] bytes;
        try
        {
            var file = new FileInfo(path);
            if (file.Exists && file.Length > PhotoPicture.MostBytes)
            {
                throw new CannotBeDoneException(FormattableString.Invariant(
                    $"--logo {Quote.Of(typed)}: this file has {file.Length / 1024} KiB, more than the allowed {PhotoPicture.MostBytes / 1024}; save it smaller"));
            }

            bytes = file.Exists ? File.ReadAllBytes(path) : throw new CannotBeDoneException($"--logo {Quote.Of(typed)}: there is no such file; check the name");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new CannotBeDoneException($"--logo {Quote.Of(typed)}: this file cannot be read: {Quote.Sentence(fault.Message)}");
        }

        return PhotoPicture.Read(bytes, out string? wrong) ?? throw new CannotBeDoneException($"--logo {Quote.Of(typed)}: {wrong}");
    }
}
