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
    private readonly Cells cells;
    private readonly CellSurfaces surfaces;
    private readonly SurfaceExchange exchange;
    private readonly double[] sent; // by facet, and by cell for its things
    private readonly double[] strikes;
    private readonly double[] sentInAll;

    internal DiffuseField(Cells cells, RoomShell shell, Point3 console)
    {
        this.cells = cells;
        surfaces = shell.Surfaces;
        exchange = shell.Exchange;
        int own = cells.At(console);
        double[] atFirst = FirstStrikes(surfaces.From(console, own, new double[Numbers(own)]));
        Reached = atFirst.Sum();
        double[] first = exchange.Strikes(atFirst, false);
        (double[] mirrored, double[] scattered) = exchange.Reflected(first);
        double[] once = exchange.Strikes(exchange.Struck(mirrored), false);
        (double[] again, double[] onwards) = exchange.Reflected(once);
        double[] setOut = Sum(scattered, again, onwards);
        double[] all = exchange.Strikes(exchange.Struck(setOut), true);
        sent = Sum(setOut, exchange.Sent(all, true));
        strikes = Sum(first, once, all);
        sentInAll = Sum(sent, mirrored, exchange.Sent(first, false), exchange.Sent(once, false));
    }

    /// <summary>What strikes each facet in all, share of the power sent out.</summary>
    internal IReadOnlyList<double> AllStrikes => strikes;

    /// <summary>Share of the power sent out that strikes surfaces or things at first; the rest is lost in the furnishing, or in the sky.</summary>
    internal double Reached { get; }

    /// <summary>Share of the power sent out that surfaces, things and furnishing turn to heat, or that leaves the house, after that.</summary>
    internal double Taken => exchange.Taken(strikes, sentInAll);

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
        int first = exchange.Node(views.Cell, 0);
        double facets = 0, seen = 0;
        for (int i = 0; i < views.Shares.Length; i++)
        {
            double area = exchange.SquareMetres(first + i);
            seen += views.Shares[i];
            facets += area > 0 ? views.Shares[i] * sent[first + i] / area : 0;
        }

        double flux = (exchange.FreeShare(views.Cell) * facets) + (views.Here * exchange.MeanOf(views.Cell, sent));
        if (exchange.ThingsShare(views.Cell) is var things and > 0)
        {
            int node = exchange.Things(views.Cell);
            flux += things * seen * sent[node] / exchange.SquareMetres(node);
        }

        for (int h = 0; h < views.Beyond.Length; h++)
        {
            flux += views.Beyond[h] * exchange.MeanOf(surfaces.BehindHole(views.Cell, h), sent);
        }

        // A quarter of a density strikes a surface from one side.
        return 4 * flux;
    }

    // As many numbers as the view factors from a cell take.
    private int Numbers(int cell) => surfaces.Of(cell).Count + surfaces.HoleCount(cell);

    private double[] FirstStrikes(in ViewFactors views)
    {
        var first = new double[exchange.Count];
        double free = exchange.FreeShare(views.Cell), seen = 0;
        for (int i = 0; i < views.Shares.Length; i++)
        {
            first[exchange.Node(views.Cell, i)] = free * views.Shares[i];
            seen += views.Shares[i];
        }

        if (exchange.ThingsShare(views.Cell) is var things and > 0)
        {
            first[exchange.Things(views.Cell)] = things * seen;
        }

        exchange.StrikeEvenly(views.Cell, views.Here, first);
        for (int h = 0; h < views.Beyond.Length; h++)
        {
            exchange.StrikeEvenly(surfaces.BehindHole(views.Cell, h), views.Beyond[h], first);
        }

        return first;
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
