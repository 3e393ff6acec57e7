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
/// two or more K·ρ·G·s, and after one that scattered K·(n + ρn·K·a). Out of doors no energy gathers: a place there sees what the
/// house's outer faces pass, which spreads as the angle they fill falls, and a console there sends in its share of them. A place that looks at a mirror sees its share of G·s thrown
/// back, the last reflection; one that looks through a wall, or stands in the plane of a hole, sees of the cell behind what has
/// had all its reflections. Between cells G and K·ρ·G are symmetrical, since as much passes a wall one way as the other.
/// </para>
/// </summary>
internal sealed class DiffuseField
{
    private readonly Cells cells;
    private readonly CellSurfaces surfaces;
    private readonly double[] reflected; // flux that has had its reflections, by cell
    private readonly double[][] brightness; // of each cell's facets, as flux; out of doors last

    internal DiffuseField(Cells cells, RoomShell shell, Point3 console)
    {
        this.cells = cells;
        surfaces = shell.Surfaces;
        int count = surfaces.Count, own = cells.At(console);
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
        brightness = new double[count + 1][];
        for (int cell = 0; cell < count; cell++)
        {
            brightness[cell] = BrightnessOf(cell, shell, flux[cell], unreflected[cell], cell == own ? views.Shares : []);
        }

        brightness[count] = BrightnessOf(Cells.Outdoors, shell, 0, 0, []);
    }

    /// <summary>What the first flights pass into each cell, share of the power sent out.</summary>
    internal IReadOnlyList<double> Passed { get; }

    /// <summary>What mirrors reflect of them.</summary>
    internal IReadOnlyList<double> Reflected { get; }

    /// <summary>What other things reflect of them.</summary>
    internal IReadOnlyList<double> Scattered { get; }

    /// <summary>What they lose to heat and out of doors; with the other three it makes 1.</summary>
    internal double LostShare { get; }

    /// <summary>Scalar power density at a place, per square metre, for each watt sent out.</summary>
    internal double At(Point3 place)
    {
        int cell = cells.At(place);
        using Scratch scratch = Scratch.Open();
        return At(surfaces.From(place, cell, scratch.Of<double>(Numbers(cell))));
    }

    /// <summary>The same for what a place sees.</summary>
    internal double At(in ViewFactors views)
    {
        double[] bright = brightness[views.Cell == Cells.Outdoors ? ^1 : views.Cell];
        double flux = views.Here * ReflectedIn(views.Cell);
        for (int i = 0; i < bright.Length; i++)
        {
            flux += views.Shares[i] * bright[i];
        }

        for (int h = 0; h < views.Beyond.Length; h++)
        {
            flux += views.Beyond[h] * ReflectedIn(surfaces.BehindHole(views.Cell, h));
        }

        // A quarter of a density strikes a surface from one side.
        return 4 * flux;
    }

    // Nothing comes back from out of doors.
    private double ReflectedIn(int cell) => cell == Cells.Outdoors ? 0 : reflected[cell];

    // Of each facet of a cell, what it sends into it that has had its reflections.
    private double[] BrightnessOf(int cell, RoomShell shell, double flux, double unreflected, ReadOnlySpan<double> seenByConsole)
    {
        IReadOnlyList<Facet> facets = surfaces.Of(cell);
        ReadOnlySpan<double> reflects = shell.Reflected(cell), passes = shell.Passed(cell);
        double free = shell.Balance.FreeShare(cell);
        var bright = new double[facets.Count];
        for (int i = 0; i < bright.Length; i++)
        {
            Facet facet = facets[i];
            double struck = flux;
            if (!facet.IsMirror)
            {
                struck += unreflected + (seenByConsole.IsEmpty ? 0 : free * seenByConsole[i] / facet.SquareMetres);
            }

            bright[i] = free * ((reflects[i] * struck) + (passes[i] * ReflectedIn(facet.Other)));
        }

        return bright;
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
        ReadOnlySpan<double> reflects = shell.Reflected(views.Cell), passes = shell.Passed(views.Cell);
        double free = shell.Balance.FreeShare(views.Cell);
        for (int i = 0; i < facets.Count; i++)
        {
            Facet facet = facets[i];
            double strikes = free * views.Shares[i];
            if (views.Cell != Cells.Outdoors)
            {
                (facet.IsMirror ? reflected : scattered)[views.Cell] += strikes * reflects[i];
            }

            Put(facet.Other, strikes * passes[i]);
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
