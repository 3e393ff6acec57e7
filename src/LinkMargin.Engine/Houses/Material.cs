namespace LinkMargin.Engine.Houses;

/// <summary>One row of the material table: its loss at 2.4 GHz, how certain that is, and where it is from.</summary>
/// <param name="Name">The word used in house files, such as <c>drywall-stud</c>.</param>
/// <param name="LossDb">Median loss at normal incidence, 2.4 GHz, dB, 0 or more.</param>
/// <param name="SpreadDb">One standard deviation of the loss between examples of the same thing, dB, 0 or more.</param>
/// <param name="Source">A citation, <c>common practice</c> or <c>from memory</c>.</param>
public sealed record Material(string Name, double LossDb, double SpreadDb, string Source)
{
    /// <summary>What it is, in words a builder would use.</summary>
    public string Description { get; init; } = "";

    /// <summary>Thickness the loss belongs to, metres; null where thickness plays no part.</summary>
    public double? ThicknessMetres { get; init; }

    /// <summary>
    /// Loss of what passes through the thing itself, dB, where <see cref="LossDb"/> includes diffraction round it: a model that
    /// finds the diffracted paths by itself uses this. Null where both are the same.
    /// </summary>
    public double? ThroughDb { get; init; }

    /// <summary>The angle at which the loss holds; from there the layers decide how it changes with the angle.</summary>
    public LossAngle Angle { get; init; } = LossAngle.HeadOn;

    /// <summary>
    /// The row this is a depth of, such as <c>timber</c> for a joist 225 mm deep; null for a row as it stands. All depths of
    /// a row are the same substance, so an error in its loss is an error in all.
    /// </summary>
    public string? ScaledFrom { get; init; }

    /// <summary>Its loss, spread and any shift of its loss, as a multiple of the row's.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>The row of the material table this is, or is a depth of.</summary>
    public string TableRow => ScaledFrom ?? Name;

    /// <summary>
    /// Remaining spread, after a fit to measurements, of the shift that all of this material in the house has in common, dB;
    /// null where nothing was fitted and the table's spread holds.
    /// </summary>
    public double? FittedSpreadDb { get; init; }

    /// <summary>How the loss applies.</summary>
    public LossForm Form { get; init; } = LossForm.Sheet;

    /// <summary>How it reflects; null where its layers or, without layers, its loss decide.</summary>
    public SheetReflection? Reflects { get; init; }

    /// <summary>Electrical properties, for a material that is one substance; null where unknown or mixed.</summary>
    public Dielectric? Dielectric { get; init; }

    /// <summary>What it is built of from one face to the other, for a composite; empty where not stated.</summary>
    public IReadOnlyList<Layer> Layers { get; init; } = [];

    /// <summary>Studs or battens inside a composite; null where there are none.</summary>
    public Ribs? Ribs { get; init; }
}

/// <summary>The angle at which a material's table loss holds.</summary>
public enum LossAngle
{
    /// <summary>Normal incidence.</summary>
    HeadOn,

    /// <summary>A mean over the angles found in buildings, as in figures fitted to whole buildings.</summary>
    Mean,
}

/// <summary>How a sheet without stated layers reflects.</summary>
public enum SheetReflection
{
    /// <summary>Board and timber: reflects little and absorbs most of what does not pass.</summary>
    Board,

    /// <summary>Metal: reflects most of what does not pass; so does a mesh, however much passes.</summary>
    Metal,
}

/// <summary>How a material's table loss applies to what is made of it.</summary>
public enum LossForm
{
    /// <summary>The loss is that of the whole thing at its own thickness: a wall, a door, a pane, a panel.</summary>
    Sheet,

    /// <summary>The loss is that of the stated thickness and grows with the length travelled inside: water, masonry, books, a body.</summary>
    Bulk,
}

/// <summary>One layer of a composite.</summary>
/// <param name="Substance">Electrical properties; null for an air cavity.</param>
/// <param name="SubstanceName">The table row the properties come from, or <c>air</c>.</param>
/// <param name="ThicknessMetres">Thickness, metres, above 0.</param>
/// <param name="ToleranceMetres">Half-range of the thickness between examples, metres, 0 or more; cavities vary most.</param>
public sealed record Layer(Dielectric? Substance, string SubstanceName, double ThicknessMetres, double ToleranceMetres);

/// <summary>
/// Coefficients of the material model of Recommendation ITU-R P.2040-3 (08/2023), section 3, Table 3: relative
/// permittivity a·f^b and conductivity c·f^d in S/m, f in GHz.
/// </summary>
/// <param name="A">a, relative permittivity at 1 GHz; 1 or more.</param>
/// <param name="B">b, exponent of the permittivity.</param>
/// <param name="C">c, conductivity at 1 GHz, S/m; 0 or more.</param>
/// <param name="D">d, exponent of the conductivity.</param>
public sealed record Dielectric(double A, double B, double C, double D);
