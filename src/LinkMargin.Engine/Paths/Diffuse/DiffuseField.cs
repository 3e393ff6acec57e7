using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The diffuse field of one console: everything that reaches a place after two reflections or more, or after one that no path
/// of its own stands for.
/// <para>
/// A console's first flights strike the facets of its cell, each its share of the sphere. What a facet reflects leaves it by Lambert's
/// law, as does what it passes, and strikes the next by their form factors (<see cref="SurfaceExchange"/>). The last flight to a place is
/// the first one of a console there, flown backwards, so two places always hear each other alike.
/// </para>
/// <para>
/// Let a be what the first flights strike, K all that strikes as long as nothing reflects, m what mirrors reflect of K·a and n what
/// other things scatter: m strikes K·m. The field is what sets out from n and from the reflections of K·m, with all that becomes of
/// it. A path's own kind counts what m does: one reflection by a mirror. In the plane of a hole, where the two cells' facets would
/// tell two stories, half of what a place sees is the mean of the one cell and half of the other. Out of doors no energy gathers: a
/// place there sees what the house's outer faces pass, which spreads as the angle they fill falls.
/// </para>
/// </summary>
internal sealed class DiffuseField
{
    // Of the change of one material's loss by a decibel, slopes need no more than this.
    private const double LeastShareOfShift = 1e-4;

    private readonly Cells cells;
    private readonly CellSurfaces surfaces;
    private readonly SurfaceExchange exchange;
    private readonly double[] sent; // by facet, and by cell for its things
    private readonly double[] densities; // the same for each square metre
    private readonly double[] first; // what strikes before any reflection, after one by a mirror, and in the end
    private readonly double[] once;
    private readonly double[] all;

    internal DiffuseField(Cells cells, RoomShell shell, Point3 console)
        : this(cells, shell, console, null)
    {
    }

    // The same with other losses, not far off: what is solved for one is the first answer to the other.
    private DiffuseField(Cells cells, RoomShell shell, Point3 console, DiffuseField? near)
    {
        double leastShare = near is null ? ExchangeSolver.LeastShare : LeastShareOfShift;
        this.cells = cells;
        surfaces = shell.Surfaces;
        exchange = shell.Exchange;
        double[] atFirst = FirstStrikes(console);
        first = shell.Solver.Strikes(atFirst, false, near?.first, leastShare);
        once = shell.Solver.Strikes(exchange.Struck(exchange.ReflectedByMirrors(first)), false, near?.once, leastShare);
        double[] setOut = exchange.ReflectedOnwards(first, once);
        all = shell.Solver.Strikes(exchange.Struck(setOut), true, near?.all, leastShare);
        sent = Sum(setOut, exchange.Sent(all, true));
        densities = new double[sent.Length];
        for (int i = 0; i < densities.Length; i++)
        {
            densities[i] = exchange.SquareMetres(i) > 0 ? sent[i] / exchange.SquareMetres(i) : 0;
        }
    }

    /// <summary>The field of the same console with losses that are not far off.</summary>
    internal DiffuseField With(RoomShell shell, Point3 console) => new(cells, shell, console, this);

    /// <summary>What strikes each facet in all, share of the power sent out.</summary>
    internal IReadOnlyList<double> AllStrikes => Sum(first, once, all);

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
        ReadOnlySpan<double> shares = views.Shares, density = densities.AsSpan(exchange.Node(views.Cell, 0), shares.Length);
        double facets = 0, seen = 0;
        for (int i = 0; i < shares.Length; i++)
        {
            seen += shares[i];
            facets += shares[i] * density[i];
        }

        double flux = exchange.FreeShare(views.Cell) * facets;
        if (exchange.ThingsShare(views.Cell) is var things and > 0)
        {
            flux += things * seen * densities[exchange.Things(views.Cell)];
        }

        if (views.Here > 0)
        {
            flux += views.Here * exchange.MeanOf(views.Cell, sent);
        }

        for (int h = 0; h < views.Beyond.Length; h++)
        {
            flux += views.Beyond[h] > 0 ? views.Beyond[h] * exchange.MeanOf(surfaces.BehindHole(views.Cell, h), sent) : 0;
        }

        // A quarter of a density strikes a surface from one side.
        return 4 * flux;
    }

    // As many numbers as the view factors from a cell take.
    private int Numbers(int cell) => surfaces.Of(cell).Count + surfaces.HoleCount(cell);

    /// <summary>What the flights that leave a console strike first, share of the power sent out; the rest is lost in the furnishing, or in the sky.</summary>
    internal double[] FirstStrikes(Point3 console)
    {
        int cell = cells.At(console);
        ViewFactors views = surfaces.From(console, cell, new double[Numbers(cell)]);
        var atFirst = new double[exchange.Count];
        double free = exchange.FreeShare(views.Cell), seen = 0;
        for (int i = 0; i < views.Shares.Length; i++)
        {
            atFirst[exchange.Node(views.Cell, i)] = free * views.Shares[i];
            seen += views.Shares[i];
        }

        if (exchange.ThingsShare(views.Cell) is var things and > 0)
        {
            atFirst[exchange.Things(views.Cell)] = things * seen;
        }

        exchange.StrikeEvenly(views.Cell, views.Here, atFirst);
        for (int h = 0; h < views.Beyond.Length; h++)
        {
            exchange.StrikeEvenly(surfaces.BehindHole(views.Cell, h), views.Beyond[h], atFirst);
        }

        return atFirst;
    }

    private static double[] Sum(params double[][] parts)
    {
        double[] sum = [.. parts[0]];
        foreach (double[] part in parts.AsSpan(1))
        {
            for (int i = 0; i < sum.Length; i++)
            {
                sum[i] += part[i];
            }
        }

        return sum;
    }
}
