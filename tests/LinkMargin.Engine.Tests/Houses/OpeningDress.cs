using CsCheck;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Houses;

/// <summary>What an opening is like, whatever wall it comes into. Shares are of the stretch of wall it may take up.</summary>
internal sealed record OpeningDress(
    double StartShare, double WidthShare, double SillMetres, double HeightMetres, Material? Leaf, bool IsOpen, bool InDecimetres)
{
    // Ends of the range are drawn often: openings that begin where their wall begins, or stand side by side.
    private static readonly Gen<double> Share = Gen.OneOf(Gen.Const(0.0), Gen.Const(1.0), Gen.Double[0, 1]);

    internal static readonly Gen<OpeningDress> Any =
        from start in Share
        from width in Share
        from sill in Gen.OneOf(Gen.Const(0.0), RandomPlace.Metres(3, 12))
        from height in RandomPlace.Metres(5, 25)
        from leaf in RandomMaterial.OfASheet
        from bare in Gen.Int[0, 3]
        from open in Gen.Bool
        from rounded in Gen.Bool
        select new OpeningDress(start, width, sill, height, bare == 0 ? null : leaf, open, rounded);

    /// <summary>The opening in a stretch of a wall; null where it does not fit.</summary>
    internal Opening? In(string name, double stretchFrom, double stretchLength, double bottom, double top)
    {
        double offset = stretchFrom + (StartShare * stretchLength);
        double width = WidthShare * (stretchFrom + stretchLength - offset);
        if (InDecimetres)
        {
            offset = Math.Ceiling(10 * offset) / 10;
            width = Math.Floor(10 * Math.Min(width, stretchFrom + stretchLength - offset)) / 10;
        }

        double sill = Math.Max(SillMetres, bottom);
        double height = Math.Min(HeightMetres, top - sill);
        return width < 0.05 || height < 0.05
            ? null
            : new Opening(name, OpeningKind.Door, offset, width, sill, height, Leaf, IsOpen);
    }
}
