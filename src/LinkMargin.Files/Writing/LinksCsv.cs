using System.Globalization;
using CsvHelper;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Files.Writing;

/// <summary>All links of a house as comma-separated values for a spreadsheet: one file of margins, one of budgets.</summary>
public static class LinksCsv
{
    // 0.1 mm, and 0.0001 of a decibel or a probability.
    private const string Number = "0.####";
    private const int Decimals = 4;

    /// <summary>The headings of the margins; each carries its unit.</summary>
    public static IReadOnlyList<string> MarginHeadings { get; } =
    [
        "rank", "spot", "spotLevel", "seat", "seatLevel", "requiredDb", "medianDb", "marginAtConfidenceDb", "headroomDb", "probabilityPasses", "passes", "usedDays",
    ];

    /// <summary>The headings of the budgets; a row for each direction of each link.</summary>
    public static IReadOnlyList<string> BudgetHeadings { get; } =
    [
        "spot", "seat", "from", "distanceM", "transmitDbm", "antennaGainsDb", "handAndBodyDb", "polarisationMismatchDb", "pathLossDb", "receivedDbm",
        "sensitivityDbm", "tableMedianDb",
    ];

    /// <summary>The first lines of both, by which the program recognises its own files.</summary>
    internal static IReadOnlyList<string> HeadingLines { get; } = [string.Join(',', MarginHeadings) + "\n", string.Join(',', BudgetHeadings) + "\n"];

    /// <summary>Writes the margins, spots in the order of the ranking, in UTF-8 with line feeds.</summary>
    public static void WriteMargins(House house, Ranking ranking, HouseUncertainty uncertainty, Stream output)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(ranking);
        ArgumentNullException.ThrowIfNull(uncertainty);
        using CsvWriter csv = Open(output, MarginHeadings);
        for (int rank = 0; rank < ranking.Scores.Count; rank++)
        {
            SpotScore score = ranking.Scores[rank];
            foreach (LinkBudget link in score.Budgets)
            {
                csv.WriteField((rank + 1).ToString(CultureInfo.InvariantCulture));
                csv.WriteField(SpreadsheetText.Written(score.Spot.Name));
                csv.WriteField(SpreadsheetText.Written(house.Levels[score.Spot.LevelIndex].Name));
                csv.WriteField(SpreadsheetText.Written(link.Seat.Name));
                csv.WriteField(SpreadsheetText.Written(house.Levels[link.Seat.LevelIndex].Name));
                Write(csv, link.RequiredDb, uncertainty.With(link).MedianDb, score.By.MarginDb(link), score.By.HeadroomDb(link), uncertainty.ProbabilityPasses(link));
                csv.WriteField(score.By.Passes(link) ? "true" : "false");
                Write(csv, link.Seat.UsedDays);
                csv.EndRecord();
            }
        }
    }

    /// <summary>Writes the budgets, in the same order.</summary>
    public static void WriteBudgets(Ranking ranking, Stream output)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        using CsvWriter csv = Open(output, BudgetHeadings);
        foreach (LinkBudget link in ranking.Scores.SelectMany(score => score.Budgets))
        {
            foreach (DirectionBudget direction in link.Directions)
            {
                csv.WriteField(SpreadsheetText.Written(link.Spot.Name));
                csv.WriteField(SpreadsheetText.Written(link.Seat.Name));
                csv.WriteField(direction.From);
                Write(
                    csv,
                    link.DistanceMetres,
                    direction.TransmitDbm,
                    direction.AntennaGainsDb,
                    direction.HandAndBodyDb,
                    direction.PolarisationDb,
                    link.PathLossDb,
                    direction.ReceivedDbm,
                    direction.SensitivityDbm,
                    direction.MarginDb);
                csv.EndRecord();
            }
        }
    }

    private static CsvWriter Open(Stream output, IReadOnlyList<string> headings)
    {
        CsvWriter csv = CsvWriter.Create(output, new CsvWriterOptions { NewLine = "\n", FormatProvider = CultureInfo.InvariantCulture }, leaveOpen: true);
        csv.WriteHeader([.. headings]);
        return csv;
    }

    // A value that is 0 after rounding is written as 0, not −0.
    private static void Write(CsvWriter csv, params ReadOnlySpan<double> values)
    {
        foreach (double value in values)
        {
            csv.WriteField(Math.Round(value, Decimals) + 0.0, Number);
        }
    }
}
