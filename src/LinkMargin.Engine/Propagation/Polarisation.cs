namespace LinkMargin.Engine.Propagation;

/// <summary>Which way the electric field points, seen from the plane of incidence.</summary>
public enum Polarisation
{
    /// <summary>TE: the electric field is square to the plane of incidence.</summary>
    TransverseElectric,

    /// <summary>TM: the electric field lies in the plane of incidence.</summary>
    TransverseMagnetic,
}
