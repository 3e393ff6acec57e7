using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Tables;

/// <summary>Makes a layer or a member of a given depth out of a row.</summary>
internal static class MaterialScaling
{
    /// <summary>
    /// The row as a layer or member so deep. A bulk row's loss and spread follow the depth, and it is then called by both,
    /// such as <c>timber-225mm</c>; a sheet row's loss is that of the whole thing and stays.
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

    /// <summary>What is wrong with a row at that depth, as the end of a message; null where nothing is.</summary>
    public static string? Fault(Material row, double depthMetres)
    {
        double loss = AtDepth(row, depthMetres).LossDb;
        return TableLimits.Loss.Contains(loss)
            ? null
            : $"'{row.Name}' {TableLimits.Thickness.Show(depthMetres)} deep comes to {TableLimits.Loss.Show(loss)}, outside the allowed {TableLimits.Loss}; make it thinner, or write a sheet row for it";
    }
}
