using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the rows of a material table one by one; the rows they are built of are looked up later.</summary>
internal static class MaterialRowReader
{
    private static readonly string[] RowKeys =
        ["name", "what", SearchWords.KindKey, SearchWords.AlsoKey, "loss", "through", "spread", "thickness", "form", "angles", "reflects", "dielectric", "layers", "studs", "source"];

    private static readonly string[] LayerKeys = ["of", "thickness", "tolerance"];

    private static readonly string[] DielectricKeys = ["a", "b", "c", "d"];

    private static readonly Dictionary<string, LossForm> Forms = new() { ["sheet"] = LossForm.Sheet, ["bulk"] = LossForm.Bulk };

    private static readonly Dictionary<string, LossAngle> Angles = new() { ["head-on"] = LossAngle.HeadOn, ["mean"] = LossAngle.Mean };

    private static readonly Dictionary<string, SheetReflection> Reflections =
        new() { ["board"] = SheetReflection.Board, ["metal"] = SheetReflection.Metal };

    /// <summary>Reads the valid rows in order.</summary>
    public static IReadOnlyList<MaterialDraft> Read(MappingReader table, RowNames names, SearchWords words) =>
        [.. TableRows.Of(table, "materials", "a material", RowKeys).Select(row => ReadRow(row, names, words)).OfType<MaterialDraft>()];

    private static MaterialDraft? ReadRow(MappingReader row, RowNames names, SearchWords words)
    {
        int before = row.Source.Problems.Count;
        string? name = names.Read(row);
        string? what = row.RequiredText("what");
        words.Read(row, name, hasKind: true);
        double? loss = row.RequiredNumber("loss", Quantities.Quantity.Decibels, TableLimits.Loss);
        double? through = row.OptionalNumber("through", Quantities.Quantity.Decibels, TableLimits.Loss);
        double? spread = row.RequiredNumber("spread", Quantities.Quantity.Decibels, TableLimits.Spread);
        double? thickness = row.OptionalLength("thickness", TableLimits.Thickness);
        LossForm form = row.OptionalWord("form", Forms, "a form of loss") ?? LossForm.Sheet;
        LossAngle angle = row.OptionalWord("angles", Angles, "an angle of loss") ?? LossAngle.HeadOn;
        SheetReflection? reflects = row.OptionalWord("reflects", Reflections, "a kind of reflection");
        string? source = row.RequiredText("source");
        Dielectric? dielectric = ReadDielectric(row);
        List<LayerDraft> layers = ReadLayers(row);
        RibsDraft? studs = RibsReader.Read(row, "studs");
        if (form == LossForm.Bulk && !row.Has("thickness"))
        {
            row.Source.Error(row.Mark, "form: a bulk loss is stated for a thickness; add 'thickness'");
        }

        if (row.Has("dielectric") && row.Has("layers"))
        {
            row.Source.Error(row.MarkOf("layers"), "layers: a row has either 'dielectric' or 'layers', not both; remove one");
        }

        if (row.Has("reflects") && (row.Has("dielectric") || row.Has("layers")))
        {
            row.Source.Error(row.MarkOf("reflects"), "reflects: 'dielectric' or 'layers' already determine what this row reflects; remove one of the two");
        }

        // Checked last, so that every error of the row is reported.
        return row.Source.Problems.Count > before || name is null || loss is null || spread is null || source is null
            ? null
            : new MaterialDraft(
                new Material(name, loss.Value, spread.Value, source)
                {
                    Description = what ?? "",
                    ThicknessMetres = thickness,
                    ThroughDb = through,
                    Angle = angle,
                    Reflects = reflects,
                    Form = form,
                    Dielectric = dielectric,
                },
                layers,
                studs);
    }

    private static Dielectric? ReadDielectric(MappingReader row)
    {
        if (row.OptionalGroup("dielectric", "a dielectric", DielectricKeys) is not { } group)
        {
            return null;
        }

        double? a = group.RequiredNumber("a", Quantities.Quantity.Plain, TableLimits.Permittivity);
        double? b = group.RequiredNumber("b", Quantities.Quantity.Plain, TableLimits.Exponent);
        double? c = group.RequiredNumber("c", Quantities.Quantity.Plain, TableLimits.Conductivity);
        double? d = group.RequiredNumber("d", Quantities.Quantity.Plain, TableLimits.Exponent);
        return a is null || b is null || c is null || d is null ? null : new Dielectric(a.Value, b.Value, c.Value, d.Value);
    }

    private static List<LayerDraft> ReadLayers(MappingReader row)
    {
        List<LayerDraft> layers = [];
        foreach (MappingReader layer in row.OptionalGroups("layers", "a layer", LayerKeys))
        {
            double? thickness = layer.OptionalLength("thickness", TableLimits.Thickness);
            double tolerance = ToleranceReader.Read(layer, thickness);
            if (layer.RequiredName("of") is { } of)
            {
                layers.Add(new LayerDraft(of, layer.MarkOf("of"), thickness, tolerance));
            }
        }

        return layers;
    }
}

/// <summary>A row of the material table as written: the material without its layers and studs, and those as written.</summary>
internal sealed record MaterialDraft(Material Plain, IReadOnlyList<LayerDraft> Layers, RibsDraft? Studs);

/// <summary>A layer of a construction as written: the row it is of, or air, and its thickness if given.</summary>
internal sealed record LayerDraft(string Of, Mark OfMark, double? ThicknessMetres, double ToleranceMetres);

/// <summary>Studs or joists as written, lengths in metres.</summary>
internal sealed record RibsDraft(string Of, Mark OfMark, double WidthMetres, double DepthMetres, double SpacingMetres);

/// <summary>Reads studs or joists: material, width, depth and spacing.</summary>
internal static class RibsReader
{
    private static readonly string[] Keys = ["of", "width", "depth", "spacing"];

    /// <summary>Reads them; null if they are not written or, with errors recorded, not valid.</summary>
    /// <param name="row">The row that they belong to.</param>
    /// <param name="key">Their key.</param>
    public static RibsDraft? Read(MappingReader row, string key)
    {
        if (row.OptionalGroup(key, $"a group of {key}", Keys) is not { } ribs)
        {
            return null;
        }

        string? of = ribs.RequiredName("of");
        double? width = ribs.RequiredLength("width", TableLimits.Thickness);
        double? depth = ribs.RequiredLength("depth", TableLimits.Thickness);
        double? spacing = ribs.RequiredLength("spacing", TableLimits.Spacing);
        if (width >= spacing)
        {
            ribs.Source.Error(
                ribs.MarkOf("spacing"),
                $"spacing: {key} {TableLimits.Spacing.Show(width.Value)} wide do not fit at a spacing of {TableLimits.Spacing.Show(spacing.Value)}; give the distance from centre to centre");
            return null;
        }

        return of is not null && width is not null && depth is not null && spacing is not null
            ? new RibsDraft(of, ribs.MarkOf("of"), width.Value, depth.Value, spacing.Value)
            : null;
    }
}

/// <summary>Reads the tolerance of a thickness.</summary>
internal static class ToleranceReader
{
    /// <summary>Reads it; 0 if it is not written or, with an error recorded, not valid.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="thicknessMetres">Its thickness, metres, which must stay above 0; null if not known here.</param>
    public static double Read(MappingReader layer, double? thicknessMetres)
    {
        double? tolerance = layer.OptionalLength("tolerance", TableLimits.Tolerance);
        if (tolerance >= thicknessMetres)
        {
            layer.Source.Error(
                layer.MarkOf("tolerance"),
                $"tolerance: {TableLimits.Tolerance.Show(tolerance.Value)} is more than a layer {TableLimits.Thickness.Show(thicknessMetres.Value)} thick allows; give half of the difference between the thinnest and the thickest");
        }

        return tolerance ?? 0;
    }
}
