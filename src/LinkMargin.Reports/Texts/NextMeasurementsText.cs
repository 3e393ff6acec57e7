using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>The readings to take next, and what they are for.</summary>
/// <param name="loaded">The house.</param>
/// <param name="ranking">Its spots, best first.</param>
/// <param name="measurements">The readings, in the order to take them.</param>
internal sealed class NextMeasurementsText(LoadedHouse loaded, Ranking ranking, IReadOnlyList<NextMeasurement> measurements)
{
    /// <summary>The plan they are drawn on; null where there is none.</summary>
    public string? Picture { get; init; }

    /// <summary>Writes it.</summary>
    public void Write(TextWriter output, int width)
    {
        House house = loaded.House;
        WordWrap.Write(
            $"{house.Name}: the readings that would most reduce the doubt about the decision, which is now for "
                + $"'{ranking.Scores[0].Spot.Name}': whether each of its seats has what it asks for, and whether another spot is better.",
            output,
            width);
        output.WriteLine();
        var table = new TextTable(
        [
            new Column(""),
            new Column("send from"),
            new Column("stand") { Wraps = true },
            new Column("level"),
            new Column("x, y"),
            new Column("doubt left", Align.Right),
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
            $"In this order, each worth most beside those above it; hold the device {loaded.Lengths.Brief(FieldRequest.SofaHandsMetres)} or as high as the seat's hands over the floor. "
                + "Take one more in sight of the transmitter first, so that the level of the devices is known.",
            output,
            width);
        WordWrap.Write(
            "'doubt left': on average, of the doubt that comes of not knowing the house; how the radios are stays doubtful whatever is read.",
            output,
            width);
        if (Picture is not null)
        {
            WordWrap.Write($"{Picture}: the places on the plan.", output, width);
        }
    }
}
