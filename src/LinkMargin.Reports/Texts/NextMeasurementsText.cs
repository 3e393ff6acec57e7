using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>The measurements to take next, and their purpose.</summary>
/// <param name="loaded">The house.</param>
/// <param name="ranking">Its spots, best first.</param>
/// <param name="measurements">The measurements, in the order to take them.</param>
internal sealed class NextMeasurementsText(LoadedHouse loaded, Ranking ranking, IReadOnlyList<NextMeasurement> measurements)
{
    /// <summary>The plan they are drawn on; null if there is none.</summary>
    public string? Picture { get; init; }

    /// <summary>Writes the measurements.</summary>
    public void Write(TextWriter output, int width)
    {
        House house = loaded.House;
        WordWrap.Write(
            $"{house.Name}: measurements that would reduce the uncertainty most. Current best spot: "
                + $"'{ranking.Scores[0].Spot.Name}'; open questions: whether each of its seats passes, and whether another spot is better.",
            output,
            width);
        output.WriteLine();
        var table = new TextTable(
        [
            new Column(""),
            new Column("transmit\nfrom"),
            new Column("receive") { Wraps = true },
            new Column("level"),
            new Column("x, y"),
            new Column("uncertainty\nleft", Align.Right),
        ]);
        for (int i = 0; i < measurements.Count; i++)
        {
            NextMeasurement one = measurements[i];
            table.Add(
                (i + 1).ToString(CultureInfo.InvariantCulture),
                one.Transmitter.Name,
                one.Where,
                house.Levels[one.LevelIndex].Name,
                $"{loaded.Lengths.Brief(one.Plan.X)}, {loaded.Lengths.Brief(one.Plan.Y)}",
                string.Create(CultureInfo.InvariantCulture, $"{100 * one.UncertaintyLeft:0} %"));
        }

        table.WriteTo(output, width);
        WordWrap.Write(
            $"First take one in line of sight of the transmitter, so that the fit knows how the device reads. Then take these in order, with the device {loaded.Lengths.Brief(FieldRequest.SofaHandsMetres)} above the floor, or at the height of the seat's hands.",
            output,
            width);
        WordWrap.Write(
            "Uncertainty left: after this measurement and those above it, on average, as a share of what the house contributes. That of the radios stays.",
            output,
            width);
        if (Picture is not null)
        {
            WordWrap.Write($"{Picture}: the positions on the plan.", output, width);
        }
    }
}
