using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Cli.Output;

/// <summary>One path, part by part; the figures add up as printed.</summary>
/// <param name="house">The house.</param>
/// <param name="lengths">How lengths are said.</param>
/// <param name="path">The path.</param>
/// <param name="printed">The budget's figures.</param>
internal sealed class PathTable(House house, LengthWords lengths, PathBudget path, PrintedBudget printed)
{
    private readonly bool hasShares = path.Path.Crossings.Any(HasShare);

    /// <summary>Writes it.</summary>
    /// <param name="heading">What stands above the parts.</param>
    /// <param name="output">Where to.</param>
    /// <param name="width">How wide it may be.</param>
    public void Write(string heading, TextWriter output, int width)
    {
        List<Column> columns =
        [
            new("from spot", Align.Right), new(heading) { Wraps = true }, new("level"), new("material"), new("angle", Align.Right),
        ];
        if (hasShares)
        {
            columns.Add(new Column("share", Align.Right));
        }

        columns.Add(new Column("loss, dB", Align.Right));
        var table = new TextTable(columns);
        PathPart[] parts = PathPart.Of(path, lengths);
        foreach ((PathPart part, long loss) in parts.Zip(printed.PartsOf(path, parts)))
        {
            Add(table, part, loss);
        }

        table.AddRule();
        Add(table, new PathPart("together", path.LossDb), printed.LossOf(path));
        table.WriteTo(output, width);
    }

    /// <summary>Whether a crossing counts by a share of the loss its material is listed with.</summary>
    public static bool HasShare(Crossing crossing) => crossing.Kind == ObstacleKind.Joists || crossing.Share != 1;

    private void Add(TextTable table, PathPart part, long loss)
    {
        Crossing? crossing = part.Crossing;
        string at = crossing is null ? "" : lengths.Brief(crossing.DistanceMetres);
        string level = crossing is null ? "" : LevelWords(crossing);
        string angle = crossing is null ? "" : string.Create(CultureInfo.InvariantCulture, $"{crossing.IncidenceDegrees:0} deg");
        string share = crossing is null || !HasShare(crossing) ? "" : string.Create(CultureInfo.InvariantCulture, $"{100 * crossing.Share:0} %");
        string material = crossing?.Material.Name ?? "", figure = Tenths.Show(loss);
        table.Add(hasShares ? [at, part.What, level, material, angle, share, figure] : [at, part.What, level, material, angle, figure]);
    }

    private string LevelWords(Crossing crossing)
    {
        string level = house.Levels[crossing.LevelIndex].Name;
        return crossing.Kind is ObstacleKind.FloorLayer or ObstacleKind.Joists ? $"above {level}" : level;
    }
}
