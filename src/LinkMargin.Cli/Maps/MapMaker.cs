using System.Runtime.ExceptionServices;
using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Json;
using LinkMargin.Files.Writing;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;

namespace LinkMargin.Cli.Maps;

/// <summary>Computes fields, draws them with one colour scale and writes the files.</summary>
/// <param name="invocation">Where messages go.</param>
/// <param name="loaded">The house.</param>
/// <param name="model">The house, ready.</param>
internal sealed class MapMaker(Invocation invocation, LoadedHouse loaded, LinkModel model)
{
    // A picture takes about as long as this many rows of a field, and the sheet as this many pictures. Only the progress bar
    // uses these.
    private const long RowsWorthOfPicture = 50;
    private const long PicturesWorthOfSheet = 4;

    private readonly House house = loaded.House;

    /// <summary>Makes all maps of an order and returns what was written.</summary>
    public MapsDocument Make(MapOrder order)
    {
        invocation.Files.MakeFolder(order.Folder);
        int[] rows = [.. order.Levels.Select(level => LevelGrid.Over(house.Levels[level], order.CellMetres).Rows)];
        int pictures = order.Spots.Count * order.Levels.Count;
        long drawing = (pictures + (pictures > 1 ? PicturesWorthOfSheet : 0)) * RowsWorthOfPicture;
        var progress = new Progress((order.Spots.Count * rows.Sum(r => (long)r)) + drawing);
        MapsDocument? made = null;
        ProgressBar.While(invocation, "maps", progress, () => made = Write(order, Compute(order, progress), progress));
        return made!;
    }

    private List<(Field Median, Field AtConfidence)> Compute(MapOrder order, Progress progress)
    {
        var maps = new CountedMaps(model, loaded.Uncertainty, order.Confidence, RequiredMargin.OfMost(house));
        List<(Field Median, Field AtConfidence)> fields = [];
        foreach (Spot spot in order.Spots)
        {
            foreach (int level in order.Levels)
            {
                var request = new FieldRequest(spot, level)
                {
                    CellMetres = order.CellMetres,
                    HandsMetres = order.HandsMetres,
                    Stage = order.IsExact ? FieldStage.Exact : FieldStage.Map,
                };
                fields.Add(maps.Compute(request, () => progress.Advance(), invocation.Cancellation));
            }
        }

        return fields;
    }

    private MapsDocument Write(MapOrder order, List<(Field Median, Field AtConfidence)> fields, Progress progress)
    {
        var pictures = new MapPictures(loaded, model, fields, new MapView(order.Spots, order.Confidence, order.ShowsMedian), order.Uncertainty);
        var names = new FileNames();
        List<MapDocument> maps = [];
        byte[][] drawn = Draw(pictures, fields, progress);
        for (int i = 0; i < fields.Count; i++)
        {
            (Field field, Field atConfidence) = fields[i];
            byte[] png = drawn[i];
            invocation.Cancellation.ThrowIfCancellationRequested();
            string stem = names.Unique("map", field.Spot.Name, "on", house.Levels[field.LevelIndex].Name);
            string picture = Put(order, $"{stem}.png", stream => stream.Write(png));
            string? csv = order.WithCsv ? Put(order, $"{stem}.csv", stream => FieldCsv.Write(house, field, atConfidence, stream)) : null;
            string? geojson = order.WithGeoJson ? Put(order, $"{stem}.geojson", stream => FieldGeoJson.Write(house, field, atConfidence, stream)) : null;
            maps.Add(MapDocument.Of(house, field, FieldSummary.Of(atConfidence, pictures.RequiredDb), FieldSummary.Of(field, pictures.RequiredDb), picture, csv, geojson));
        }

        string? sheet = null;
        if (fields.Count > 1)
        {
            sheet = Put(order, "sheet.png", stream => stream.Write(drawn[^1]));
        }

        return new MapsDocument(
            house.Name,
            [.. model.Occupied.Select(seat => seat.Name)],
            order.CellMetres,
            order.HandsMetres,
            pictures.RequiredDb,
            maps,
            sheet)
        {
            Exact = fields.TrueForAll(field => field.Median.Stage == FieldStage.Exact),
            Confidence = order.Confidence,
            WhatIf = loaded.WhatIfOrNone,
            FittedToMeasurements = loaded.FittedToMeasurements,
        };
    }

    // The pictures of all fields, then, if there are several, their sheet; drawn in parallel.
    private byte[][] Draw(MapPictures pictures, List<(Field Median, Field AtConfidence)> fields, Progress progress)
    {
        byte[][] drawn = new byte[fields.Count > 1 ? fields.Count + 1 : fields.Count][];
        try
        {
            // The sheet takes longest, so it comes first.
            Parallel.For(0, drawn.Length, new ParallelOptions { CancellationToken = invocation.Cancellation }, turn =>
            {
                int i = drawn.Length - 1 - turn;
                drawn[i] = i < fields.Count ? pictures.Map(fields[i].Median, fields[i].AtConfidence) : pictures.Sheet();
                progress.Advance(i < fields.Count ? RowsWorthOfPicture : RowsWorthOfPicture * PicturesWorthOfSheet);
            });
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }

        return drawn;
    }

    private string Put(MapOrder order, string name, Action<Stream> write)
    {
        string path = Path.Combine(order.Folder, name);
        invocation.Files.Write(path, write, order.Force);
        return path;
    }
}

/// <summary>Which maps are requested, and how.</summary>
/// <param name="Spots">The spots, at least one.</param>
/// <param name="Levels">The levels' numbers, at least one.</param>
/// <param name="CellMetres">Side of a cell, metres.</param>
/// <param name="HandsMetres">Height of the hands above the floor, metres.</param>
/// <param name="Folder">Where the files go, as typed.</param>
internal sealed record MapOrder(
    IReadOnlyList<Spot> Spots, IReadOnlyList<int> Levels, double CellMetres, double HandsMetres, string Folder)
{
    /// <summary>Share of cases in which the margin to count on is reached.</summary>
    public double Confidence { get; init; } = UncertaintyBasis.UsualConfidence;

    /// <summary>Whether the median margin is shown instead of the margin to count on.</summary>
    public bool ShowsMedian { get; init; }

    /// <summary>Whether every cell is traced.</summary>
    public bool IsExact { get; init; }

    /// <summary>The uncertainty of all links of the spots, if already known.</summary>
    public HouseUncertainty? Uncertainty { get; init; }

    /// <summary>Whether the numbers are also written as CSV.</summary>
    public bool WithCsv { get; init; }

    /// <summary>Whether the numbers are also written as GeoJSON.</summary>
    public bool WithGeoJson { get; init; }

    /// <summary>Whether files that this program did not write may be replaced.</summary>
    public bool Force { get; init; }
}
