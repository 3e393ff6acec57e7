using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The diffuse field of one console: everything that reaches a place after two reflections or more, or after one that no path
/// of its own stands for.
/// <para>
/// A console's first flights strike the facets of its cell, each its share of the sphere; what a facet passes sets out into the
/// cell behind it. After that a flight knows no more where it came from, and the power balance carries it: straight on through
/// walls (<see cref="PowerBalance.BeforeReflection"/>) and from reflection to reflection (<see cref="PowerBalance.Flux"/>). The
/// last flight to a place is the first one of a console there, flown backwards, so two places always hear each other alike.
/// </para>
/// <para>
/// Let a be what the first flights pass into each cell, m what mirrors reflect of them and n what other things scatter; K
/// the flux of what is put in before it is reflected, G that of all, ρ the area that reflects (ρn of what scatters). After
/// just one reflection s = m + n + ρ·K·a sets out. What strikes the surfaces after one reflection or more is then G·s, after
/// two or more K·ρ·G·s, and after one that scattered K·(n + ρn·K·a). A place that looks at a mirror sees its share of G·s thrown
/// back, the last reflection; one that looks through a wall, or stands in the plane of a hole, sees of the cell behind what has
/// had all its reflections. Between cells G and K·ρ·G are symmetrical, since as much passes a wall one way as the other.
/// </para>
/// </summary>
internal sealed class DiffuseField
{
    private readonly Cells cells;
    private readonly CellSurfaces surfaces;
    private readonly double[] reflected; // flux that has had its reflections, by cell
    private readonly double[][] brightness; // of each cell's facets, as flux

    internal DiffuseField(Cells cells, RoomShell shell, Point3 console)
    {
        this.cells = cells;
        surfaces = shell.Surfaces;
        int count = surfaces.Count;
        brightness = new double[count][];
        int own = cells.At(console);
        if (own == Cells.Outdoors)
        {
            reflected = new double[count];
            Passed = Reflected = Scattered = reflected;
            LostShare = 1;
            for (int cell = 0; cell < count; cell++)
            {
                brightness[cell] = new double[surfaces.Of(cell).Count];
            }

            return;
        }

        PowerBalance balance = shell.Balance;
        ViewFactors views = surfaces.From(console, own, new double[Numbers(own)]);
        (Passed, Reflected, Scattered) = FirstFlights(shell, views);
        LostShare = 1 - Passed.Sum() - Reflected.Sum() - Scattered.Sum();

        double[] unreflected = balance.BeforeReflection(Passed);
        double[] once = [.. Enumerable.Range(0, count).Select(i =>
            Reflected[i] + Scattered[i] + ((balance.MirrorArea(i) + balance.ScatteringArea(i)) * unreflected[i]))];
        double[] flux = balance.Flux(once);
        double[] twice = [.. Enumerable.Range(0, count).Select(i =>
            ((balance.MirrorArea(i) + balance.ScatteringArea(i)) * flux[i])
            + Scattered[i] + (balance.ScatteringArea(i) * unreflected[i]))];
        reflected = balance.BeforeReflection(twice);
        for (int cell = 0; cell < count; cell++)
        {
            IReadOnlyList<Facet> facets = surfaces.Of(cell);
            double free = balance.FreeShare(cell);
            brightness[cell] = new double[facets.Count];
            for (int i = 0; i < facets.Count; i++)
            {
                Facet facet = facets[i];
                double struck = flux[cell];
                if (!facet.IsMirror)
                {
                    double straight = cell == own ? free * views.Shares[i] / facet.SquareMetres : 0;
                    struck += unreflected[cell] + straight;
                }

                brightness[cell][i] = free * ((shell.Reflected(facet) * struck)
                    + (facet.Other == Cells.Outdoors ? 0 : shell.Passed(facet) * reflected[facet.Other]));
            }
        }
    }

    /// <summary>What the first flights pass into each cell, share of the power sent out.</summary>
    internal IReadOnlyList<double> Passed { get; }

    /// <summary>What mirrors reflect of them.</summary>
    internal IReadOnlyList<double> Reflected { get; }

    /// <summary>What other things reflect of them.</summary>
    internal IReadOnlyList<double> Scattered { get; }

    /// <summary>What they lose to heat and out of doors; with the other three it makes 1.</summary>
    internal double LostShare { get; }

    /// <summary>Scalar power density at a place, per square metre, for each watt sent out; none out of doors.</summary>
    internal double At(Point3 place)
    {
        int cell = cells.At(place);
        if (cell == Cells.Outdoors)
        {
            return 0;
        }

        using Scratch scratch = Scratch.Open();
        return At(surfaces.From(place, cell, scratch.Of<double>(Numbers(cell))));
    }

    /// <summary>The same for what a place sees.</summary>
    internal double At(in ViewFactors views)
    {
        double[] bright = brightness[views.Cell];
        double flux = views.Here * reflected[views.Cell];
        for (int i = 0; i < bright.Length; i++)
        {
            flux += views.Shares[i] * bright[i];
        }

        for (int h = 0; h < views.Beyond.Length; h++)
        {
            int beyond = surfaces.BehindHole(views.Cell, h);
            flux += beyond == Cells.Outdoors ? 0 : views.Beyond[h] * reflected[beyond];
        }

        // A quarter of a density strikes a surface from one side.
        return 4 * flux;
    }

    // As many numbers as the view factors from a cell take.
    private int Numbers(int cell) => surfaces.Of(cell).Count + surfaces.HoleCount(cell);

    private static (double[] Passed, double[] Reflected, double[] Scattered) FirstFlights(RoomShell shell, in ViewFactors views)
    {
        CellSurfaces surfaces = shell.Surfaces;
        var passed = new double[surfaces.Count];
        var reflected = new double[surfaces.Count];
        var scattered = new double[surfaces.Count];
        IReadOnlyList<Facet> facets = surfaces.Of(views.Cell);
        double free = shell.Balance.FreeShare(views.Cell);
        for (int i = 0; i < facets.Count; i++)
        {
            Facet facet = facets[i];
            double strikes = free * views.Shares[i];
            (facet.IsMirror ? reflected : scattered)[views.Cell] += strikes * shell.Reflected(facet);
            Put(facet.Other, strikes * shell.Passed(facet));
        }

        Put(views.Cell, views.Here);
        for (int h = 0; h < views.Beyond.Length; h++)
        {
            Put(surfaces.BehindHole(views.Cell, h), views.Beyond[h]);
        }

        return (passed, reflected, scattered);

        void Put(int cell, double power)
        {
            if (cell != Cells.Outdoors)
            {
                passed[cell] += power;
            }
        }
    }
}
