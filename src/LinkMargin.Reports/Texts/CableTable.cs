using System.Globalization;
using LinkMargin.Files.Json;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Texts;

/// <summary>The cable cost of spots or places, one row each.</summary>
internal static class CableTable
{
    /// <summary>Writes the table.</summary>
    /// <param name="rows">The name and cost of each row.</param>
    /// <param name="heading">What the rows are.</param>
    /// <param name="lengths">How lengths are written.</param>
    /// <param name="output">Where to write.</param>
    /// <param name="width">The greatest width.</param>
    public static void Write(IEnumerable<(string Name, CablesDocument Cables)> rows, string heading, LengthFormat lengths, TextWriter output, int width)
    {
        var table = new TextTable(
        [
            new Column(heading) { Wraps = true },
            new Column("new\nruns", Align.Right),
            new Column("to buy", Align.Right),
            new Column("holes\nto bore", Align.Right),
            new Column("in\njoists", Align.Right),
            new Column("carries\nthe picture"),
            new Column("can be\npulled"),
        ]);
        foreach ((string name, CablesDocument cables) in rows)
        {
            table.Add(
                name,
                cables.NewRuns.ToString(CultureInfo.InvariantCulture),
                lengths.Brief(cables.BuyM),
                cables.Holes.ToString(CultureInfo.InvariantCulture),
                cables.JoistHoles.ToString(CultureInfo.InvariantCulture),
                cables.Carries,
                cables.IsComplete ? "yes" : "no");
        }

        table.WriteTo(output, width);
    }
}
