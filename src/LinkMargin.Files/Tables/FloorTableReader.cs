using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the table of floor build-ups.</summary>
/// <param name="materials">The valid rows of the material table.</param>
/// <param name="knownNames">The names of all its rows, so that one with errors is not also reported as unknown. Null if unreadable.</param>
internal sealed class FloorTableReader(IReadOnlyDictionary<string, Material> materials, IReadOnlyCollection<string>? knownNames)
{
    private static readonly string[] RowKeys = ["name", "what", SearchWords.AlsoKey, "layers", "source"];
    private static readonly string[] LayerKeys = ["of", "thickness", "joists", "fill", "tolerance"];

    /// <summary>Reads the valid build-ups in order.</summary>
    public OrderedDictionary<string, FloorBuildUp> Read(MappingReader table, SearchWords words)
    {
        RowNames names = new();
        OrderedDictionary<string, FloorBuildUp> rows = [];
        foreach (MappingReader row in TableRows.Of(table, "floors", "a floor", RowKeys))
        {
            int before = row.Source.Problems.Count;
            string? name = names.Read(row);
            string? what = row.RequiredText("what");
            words.Read(row, name);
            string? source = row.RequiredText("source");
            List<FloorLayer?> layers = [.. row.RequiredGroups("layers", "a layer", LayerKeys).Select(ReadLayer)];
            if (layers.Count > TableLimits.MostLayers)
            {
                row.Source.Error(row.MarkOf("layers"), FormattableString.Invariant(
                    $"layers: this floor has {layers.Count} layers, more than the allowed {TableLimits.MostLayers}; remove some"));
            }

            if (row.Source.Problems.Count == before && name is not null && source is not null && !layers.Contains(null))
            {
                rows.Add(name, new FloorBuildUp(name, [.. layers.OfType<FloorLayer>()], source) { Description = what ?? "" });
            }
        }

        return rows;
    }

    private FloorLayer? ReadLayer(MappingReader layer)
    {
        if (layer.Has("joists") == layer.Has("of"))
        {
            layer.Source.Error(layer.Mark, "a layer has either 'of', which names a row of the material table, or 'joists'; write one of the two");
            return null;
        }

        return layer.Has("joists") ? ReadBay(layer) : ReadSheet(layer);
    }

    private FloorLayer? ReadSheet(MappingReader layer)
    {
        double? written = layer.OptionalLength("thickness", TableLimits.Thickness);
        if (layer.Has("fill"))
        {
            layer.Source.Error(layer.MarkOf("fill"), "fill: only a layer with 'joists' has a fill; write the layer's material as 'of'");
        }

        if (layer.RequiredName("of") is not { } of)
        {
            return null;
        }

        Material? row = of == MaterialBuilder.Air ? null : Find(layer, "of", of);
        double? own = row is { Form: LossForm.Sheet } ? row.ThicknessMetres : null;
        double tolerance = ToleranceReader.Read(layer, written ?? own);
        if (row is null && of != MaterialBuilder.Air)
        {
            return null;
        }

        if ((written ?? own) is not { } thickness)
        {
            if (!layer.Has("thickness"))
            {
                layer.Source.Error(layer.MarkOf("of"), $"of: a layer of '{of}' needs a thickness");
            }

            return null;
        }

        return new FloorLayer(Scaled(layer, "of", row, thickness), thickness, null) { ToleranceMetres = tolerance };
    }

    private FloorLayer? ReadBay(MappingReader layer)
    {
        if (layer.Has("thickness"))
        {
            layer.Source.Error(layer.MarkOf("thickness"), "thickness: a layer with 'joists' is as thick as the joists are deep; remove this key");
        }

        RibsDraft? joists = RibsReader.Read(layer, "joists");
        Material? fill = layer.OptionalName("fill") is { } word ? Find(layer, "fill", word) : null;
        double tolerance = ToleranceReader.Read(layer, joists?.DepthMetres);
        if (joists is null || Find(layer, "joists", joists.Of, joists.OfMark) is not { } row)
        {
            return null;
        }

        Material member = Scaled(layer, "joists", row, joists.DepthMetres)!;
        Ribs ribs = new(member, joists.WidthMetres, joists.DepthMetres, joists.SpacingMetres);
        return new FloorLayer(Scaled(layer, "fill", fill, joists.DepthMetres), joists.DepthMetres, ribs) { ToleranceMetres = tolerance };
    }

    private static Material? Scaled(MappingReader layer, string key, Material? row, double depth)
    {
        if (row is not null && MaterialScaling.Fault(row, depth) is { } fault)
        {
            layer.Source.Error(layer.MarkOf(key), $"{key}: {fault}");
        }

        return row is null ? null : MaterialScaling.AtDepth(row, depth);
    }

    private Material? Find(MappingReader layer, string key, string word, Mark? mark = null)
    {
        if (materials.TryGetValue(word, out Material? row))
        {
            return row;
        }

        if (knownNames is not null && !knownNames.Contains(word))
        {
            layer.Source.Error(
                mark ?? layer.MarkOf(key),
                $"{key}: {Quote.Of(word)} is not a row of the material table; {NearestWord.Advice(word, [.. knownNames], "'linkmargin materials'")}");
        }

        return null;
    }
}
