namespace LinkMargin.Engine.Houses;

/// <summary>
/// Coefficients of the material model of Recommendation ITU-R P.2040-3 (08/2023), section 3, Table 3: relative
/// permittivity a·f^b and conductivity c·f^d in S/m, f in GHz.
/// </summary>
/// <param name="A">a, relative permittivity at 1 GHz; 1 or more.</param>
/// <param name="B">b, exponent of the permittivity.</param>
/// <param name="C">c, conductivity at 1 GHz, S/m; 0 or more.</param>
/// <param name="D">d, exponent of the conductivity.</param>
public sealed record Dielectric(double A, double B, double C, double D);
