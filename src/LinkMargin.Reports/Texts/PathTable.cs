using System.Globalization;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Files.Json;
using LinkMargin.Files.Quantities;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>One path, part by part; the printed values add up.</summary>
/// <param name="house">The house.</param>
/// <param name="lengths">How lengths are written.</param>
/// <param name="path">The path.</param>
/// <param name="printed">The budget's rounded values.</param>
internal sealed class PathTable(House house, LengthFormat lengths, PathBudget path, PrintedBudget printed)
{
    /// <summary>Writes the table.</summary>
    /// <param name="heading">The text above the table.</param>
    /// <param name="output">Where to write.</param>
    /// <param name="width">The greatest width.</param>
    public void Write(string heading, TextWriter output, int width)
    {
        PathPart[] parts = PathPart.Of(path, house, lengths);
        List<(Column Column, Func<PathPart, string> Cell)> columns =
        [
            (new("from spot", Align.Right), At),
            (new("obstacle, material") { Wraps = true }, WhatOf),
            (new("level"), LevelOf),
            (new("angle", Align.Right), AngleOf),
            (new("share", Align.Right), ShareOf),
            (new("basis"), part => part.Basis is { } basis ? CrossingDocument.WordFor(basis) : ""),
        ];

        WordWrap.Write(heading, output, width);
        output.WriteLine();

        // Empty columns are omitted.
        columns.RemoveAll(c => !c.Column.Wraps && parts.All(part => c.Cell(part).Length == 0));
        var table = new TextTable([.. columns.Select(c => c.Column), new Column("loss, dB", Align.Right)]);
        foreach ((PathPart part, long loss) in parts.Zip(printed.PartsOf(path, parts)))
        {
            Add(part, loss);
        }

        table.AddRule();
        Add(new PathPart("total", path.LossDb), printed.LossOf(path));
        table.WriteTo(output, width);

        void Add(PathPart part, long loss) => table.Add([.. columns.Select(c => c.Cell(part)), Tenths.Show(loss)]);
    }

    /// <summary>Whether a crossing counts only a share of the loss its material is listed with.</summary>
    public static bool HasShare(Crossing crossing) => crossing.Kind == ObstacleKind.Joists || crossing.Share != 1;

    private string WhatOf(PathPart part) =>
        part.Crossing is { } crossing ? $"{part.What}, {PathWords.NameOf(crossing.Material, lengths)}" : part.What;

    private string At(PathPart part) => (part.Crossing?.DistanceMetres ?? part.Turn?.DistanceMetres) is double metres ? lengths.Brief(metres) : "";

    private string LevelOf(PathPart part) =>
        (part.Crossing?.LevelIndex ?? part.Turn?.LevelIndex) is int level ? house.Levels[level].Name : "";

    private static string AngleOf(PathPart part) => (part.Crossing?.IncidenceDegrees ?? part.Turn?.IncidenceDegrees) is double degrees
        ? string.Create(CultureInfo.InvariantCulture, $"{degrees:0} deg")
        : "";

    private static string ShareOf(PathPart part) => part.Crossing is { } crossing && HasShare(crossing)
        ? string.Create(CultureInfo.InvariantCulture, $"{100 * crossing.Share:0} %")
        : "";
}

/// <summary>One line in the sum of a path.</summary>
/// <param name="What">The cause of the loss or gain, in words.</param>
/// <param name="LossDb">The loss, dB; below 0 for a gain.</param>
internal sealed record PathPart(string What, double LossDb)
{
    // A smaller loss is only rounding.
    private const double NothingDb = 1e-6;

    /// <summary>The obstacle, if it is one.</summary>
    public Crossing? Crossing { get; init; }

    /// <summary>How the obstacle's loss is derived.</summary>
    public LossBasis? Basis { get; init; }

    /// <summary>The turn, if it is one.</summary>
    public PathTurn? Turn { get; init; }

    /// <summary>All parts of a path, those with a position in order from the spot; they add up to its loss.</summary>
    public static PathPart[] Of(PathBudget path, House house, LengthFormat lengths)
    {
        PathPart?[] last =
        [
            Part(path.EdgesDb < 0 ? "diffraction around these obstacles" : "diffraction at obstacles beside the path", path.EdgesDb),
            Part("interference along a surface", path.SurfacesDb),
            Part("console to diffuse field", path.DiffuseDb),
            Part("player's own body", path.BodyDb),
        ];
        return
        [
            .. path.Path.Kind == PathKind.Diffuse
                ? Array.Empty<PathPart>()
                : [new($"free space over {lengths.Brief(path.Path.LengthMetres)}", path.FreeSpaceDb)],
            .. Placed(path, house).OrderBy(part => part.Crossing?.DistanceMetres ?? part.Turn!.DistanceMetres),
            .. last.OfType<PathPart>(),
        ];
    }

    /// <summary>Whether a loss is more than rounding.</summary>
    public static bool IsShown(double lossDb) => Math.Abs(lossDb) >= NothingDb;

    // The loss of all turns of a path is one value; it is listed with the first of them.
    private static IEnumerable<PathPart> Placed(PathBudget path, House house)
    {
        for (int i = 0; i < path.CrossingsDb.Count; i++)
        {
            Crossing crossing = path.Path.Crossings[i];
            yield return new PathPart(PathWords.Of(crossing, house), path.CrossingsDb[i]) { Crossing = crossing, Basis = path.Bases[i] };
        }

        if (path.Turns.Count > 0)
        {
            string what = path.Path.Kind == PathKind.Reflected ? "reflection" : path.Turns.Count == 1 ? "diffraction at the edge" : "diffraction at the edges";
            yield return new PathPart(what, path.ReflectionDb + path.DiffractionDb) { Turn = path.Turns[0] };
        }
    }

    private static PathPart? Part(string what, double lossDb) => IsShown(lossDb) ? new(what, lossDb) : null;
}
