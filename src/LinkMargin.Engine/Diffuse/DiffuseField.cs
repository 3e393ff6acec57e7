using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Diffuse;

/// <summary>
/// The diffuse field of one console: a density for each cell from the power balance, and at a place the mean over all
/// directions it looks in.
/// <para>
/// A facet is as bright as the share it throws back of its own cell's density and the share it passes of the density behind
/// it. Beside the partition to a bright room it is brighter than in the room's far corner, and beside an outer wall darker.
/// What the facets' brightness lacks of the cell's density on average is the energy fed into the field, which comes from all
/// of them alike. At a hole the mean of both cells stands for both half spaces, so nobody who steps through sees a seam.
/// </para>
/// </summary>
internal sealed class DiffuseField
{
    private const double LeastSphere = 0.5;

    private readonly Cells cells;
    private readonly RoomShell shell;
    private readonly double[] densities; // W/m² for each watt sent out
    private readonly double[] fed; // what is fed in, as a density, by cell
    private readonly double[][] brightness; // of each cell's facets

    internal DiffuseField(Scene scene, LossTables losses, Cells cells, RoomShell shell, Point3 console)
        : this(cells, shell, EnergySources.Of(scene, losses, cells, console, out double gone)) =>
        Gone = gone;

    /// <summary>The field of known sources, in these rooms or rooms of other materials.</summary>
    internal DiffuseField(Cells cells, RoomShell shell, IReadOnlyList<double> sources)
    {
        this.cells = cells;
        this.shell = shell;
        Sources = sources;
        densities = shell.Balance.Densities(Sources);
        fed = new double[densities.Length];
        brightness = new double[densities.Length][];
        for (int cell = 0; cell < densities.Length; cell++)
        {
            IReadOnlyList<Facet> facets = shell.Of(cell);
            brightness[cell] = [.. facets.Select(f => (f.Thrown * densities[cell]) + (f.Passed * DensityOf(f.Other)))];
            double area = 0, bright = 0;
            for (int i = 0; i < facets.Count; i++)
            {
                double squareMetres = facets[i].SquareMetres;
                area += squareMetres;
                bright += squareMetres * brightness[cell][i];
            }

            fed[cell] = area > 0 ? densities[cell] - (bright / area) : densities[cell];
        }
    }

    /// <summary>Power fed to each cell, share of the power sent out.</summary>
    internal IReadOnlyList<double> Sources { get; }

    /// <summary>Power that the direct energy and first reflections lost to heat and out of doors.</summary>
    internal double Gone { get; }

    /// <summary>Scalar power density of each cell, per square metre, for each watt sent out.</summary>
    internal IReadOnlyList<double> Densities => densities;

    /// <summary>Scalar power density at a place, per square metre, for each watt sent out.</summary>
    internal double At(Point3 place)
    {
        int cell = cells.At(place);
        if (cell == Cells.Outdoors)
        {
            return 0;
        }

        double own = densities[cell], seen = 0, angle = 0;
        IReadOnlyList<Facet> facets = shell.Of(cell);
        Span<double> holes = stackalloc double[shell.HoleCount(cell)]; // share of the sphere towards each cell behind holes
        holes.Clear();
        for (int i = 0; i < facets.Count; i++)
        {
            double share = facets[i].SolidAngle(place) / (4 * Math.PI);
            seen += share * brightness[cell][i];
            angle += share;
            if (facets[i].Hole >= 0)
            {
                holes[facets[i].Hole] += share;
            }
        }

        // Facets that stand for several, or a room with recesses, may not fill the sphere exactly.
        double density = Math.Max(0, fed[cell] + (angle > 0 ? seen / Math.Max(angle, LeastSphere) : 0));
        double apart = 1, shared = 0, weights = 0;
        for (int h = 0; h < holes.Length; h++)
        {
            double near = Math.Min(1, 4 * holes[h] * holes[h]); // 1 in the hole's own plane
            apart *= 1 - near;
            weights += near;
            shared += near * (own + DensityOf(shell.BehindHole(cell, h))) / 2;
        }

        return weights > 0 ? (apart * density) + ((1 - apart) * shared / weights) : density;
    }

    private double DensityOf(int cell) => cell == Cells.Outdoors ? 0 : densities[cell];
}
