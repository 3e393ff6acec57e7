using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Looks up the parts of the rows of a material table.</summary>
internal sealed class MaterialBuilder
{
    /// <summary>The word for a cavity.</summary>
    public const string Air = "air";

    private readonly Source source;
    private readonly IReadOnlyCollection<string> knownNames;
    private readonly Dictionary<string, MaterialDraft> drafts;
    private readonly Dictionary<string, IReadOnlyList<Layer>> built = [];
    private readonly List<string> building = [];

    private MaterialBuilder(Source source, IReadOnlyList<MaterialDraft> drafts, IReadOnlyCollection<string> knownNames)
    {
        (this.source, this.knownNames) = (source, knownNames);
        this.drafts = drafts.ToDictionary(draft => draft.Plain.Name);
    }

    /// <summary>Builds every row, in written order.</summary>
    /// <param name="source">The file.</param>
    /// <param name="drafts">The rows without errors of their own.</param>
    /// <param name="knownNames">The names of all rows, so that one with errors is not also reported as unknown.</param>
    public static OrderedDictionary<string, Material> Build(
        Source source, IReadOnlyList<MaterialDraft> drafts, IReadOnlyCollection<string> knownNames)
    {
        MaterialBuilder builder = new(source, drafts, knownNames);
        OrderedDictionary<string, Material> rows = [];
        foreach (MaterialDraft draft in drafts)
        {
            rows.Add(
                draft.Plain.Name,
                draft.Plain with { Layers = builder.LayersOf(draft), Ribs = builder.RibsOf(draft.Studs) });
        }

        return rows;
    }

    private IReadOnlyList<Layer> LayersOf(MaterialDraft draft)
    {
        string name = draft.Plain.Name;
        if (built.TryGetValue(name, out IReadOnlyList<Layer>? known))
        {
            return known;
        }

        building.Add(name);
        List<Layer> layers = [];
        foreach (LayerDraft layer in draft.Layers)
        {
            IReadOnlyList<Layer> added = ThatIs(layer);
            if (layers.Count + added.Count > TableLimits.MostLayers)
            {
                source.Error(layer.OfMark, FormattableString.Invariant(
                    $"layers: '{name}' comes to more than {TableLimits.MostLayers} layers here; remove some"));
                break;
            }

            layers.AddRange(added);
        }

        building.RemoveAt(building.Count - 1);
        built.Add(name, layers);
        return layers;
    }

    private IReadOnlyList<Layer> ThatIs(LayerDraft layer)
    {
        if (layer.Of == Air)
        {
            return layer.ThicknessMetres is { } depth
                ? [new Layer(null, Air, depth, layer.ToleranceMetres)]
                : Wrong(layer, "of: air needs a thickness");
        }

        if (Find(layer.Of, layer.OfMark) is not { } draft)
        {
            return [];
        }

        if (draft.Layers.Count > 0)
        {
            return OfLayers(layer, draft);
        }

        if (draft.Plain.Dielectric is not { } dielectric)
        {
            return Wrong(layer, $"of: '{layer.Of}' has neither a dielectric nor layers, so it cannot be a layer; choose another row, or remove 'layers'");
        }

        double? own = draft.Plain.Form == LossForm.Sheet ? draft.Plain.ThicknessMetres : null;
        return (layer.ThicknessMetres ?? own) is { } thickness
            ? [new Layer(dielectric, layer.Of, thickness, layer.ToleranceMetres)]
            : Wrong(layer, $"of: a layer of '{layer.Of}' needs a thickness");
    }

    private IReadOnlyList<Layer> OfLayers(LayerDraft layer, MaterialDraft draft)
    {
        if (building.IndexOf(layer.Of) is var first and >= 0)
        {
            return Wrong(layer, $"of: '{layer.Of}' contains itself ({string.Join(" > ", building.Skip(first))} > {layer.Of}); remove one of these layers");
        }

        if (building.Count > TableLimits.MostRowsDeep)
        {
            return Wrong(layer, FormattableString.Invariant(
                $"of: rows are built of rows more than {TableLimits.MostRowsDeep} deep here, the maximum; write the layers out"));
        }

        return layer.ThicknessMetres is not null || layer.ToleranceMetres > 0
            ? Wrong(layer, $"of: '{layer.Of}' has layers of its own, which set its thickness; remove 'thickness' and 'tolerance' here")
            : LayersOf(draft);
    }

    private Ribs? RibsOf(RibsDraft? studs)
    {
        if (studs is null || Find(studs.Of, studs.OfMark) is not { } draft)
        {
            return null;
        }

        if (MaterialScaling.Fault(draft.Plain, studs.DepthMetres) is { } fault)
        {
            source.Error(studs.OfMark, $"of: {fault}");
            return null;
        }

        return new Ribs(
            MaterialScaling.AtDepth(draft.Plain, studs.DepthMetres), studs.WidthMetres, studs.DepthMetres, studs.SpacingMetres);
    }

    private MaterialDraft? Find(string name, Mark mark)
    {
        if (drafts.TryGetValue(name, out MaterialDraft? draft))
        {
            return draft;
        }

        if (!knownNames.Contains(name))
        {
            source.Error(mark, $"of: {Quote.Of(name)} is not a row of this table; {NearestWord.Advice(name, [.. knownNames, Air])}");
        }

        return null;
    }

    private IReadOnlyList<Layer> Wrong(LayerDraft layer, string message)
    {
        source.Error(layer.OfMark, message);
        return [];
    }
}

/// <summary>Makes a layer or member of a given depth from a row.</summary>
internal static class MaterialScaling
{
    /// <summary>
    /// The row as a layer or member of this depth. A bulk row's loss and spread scale with the depth, and its name gets the depth,
    /// such as <c>timber-225mm</c>; a sheet row's loss is for the whole thing and does not change.
    /// </summary>
    public static Material AtDepth(Material row, double depthMetres) =>
        row.Form == LossForm.Bulk && row.ThicknessMetres is { } thickness
            ? row with
            {
                Name = FormattableString.Invariant($"{row.Name}-{depthMetres * 1000:0.#}mm"),
                LossDb = row.LossDb * (depthMetres / thickness),
                SpreadDb = row.SpreadDb * (depthMetres / thickness),
                ThicknessMetres = depthMetres,
                ScaledFrom = row.TableRow,
                Scale = row.Scale * (depthMetres / thickness),
                Form = LossForm.Sheet,
            }
            : row;

    /// <summary>What is wrong with a row at that depth, as the end of a message; null if nothing is.</summary>
    public static string? Fault(Material row, double depthMetres)
    {
        double loss = AtDepth(row, depthMetres).LossDb;
        return TableLimits.Loss.Contains(loss)
            ? null
            : $"'{row.Name}', {TableLimits.Thickness.Show(depthMetres)} deep, has a loss of {TableLimits.Loss.Show(loss)}, outside the allowed {TableLimits.Loss}; make it thinner, or write a sheet row for it";
    }
}
