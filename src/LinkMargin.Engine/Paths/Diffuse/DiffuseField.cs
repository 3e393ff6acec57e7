using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The diffuse field of one console: everything that reaches a place after two reflections or more, or after one that is not a
/// path of its own.
/// <para>
/// The direct rays of a console strike the facets of its cell, each by its share of the sphere. What a facet reflects or passes leaves
/// it by Lambert's law and strikes the others by their form factors (<see cref="SurfaceExchange"/>). The last leg to a place is the
/// first leg from a console there, reversed, so a link has the same loss both ways.
/// </para>
/// <para>
/// Let a be what the direct rays bring to the facets, and K·a all that strikes before any reflection. Of that, mirrors reflect m and
/// other things scatter n; m then strikes K·m. The field starts from n and from the reflections of K·m, with everything that follows.
/// The reflected paths count m itself: one reflection by a mirror. In the plane of a hole, where the two cells' facets would give
/// different results, half of what a place sees is the mean of one cell and half that of the other. Outdoors no energy builds up: a
/// place there sees what the house's outer faces pass, which falls with the solid angle they fill.
/// </para>
/// </summary>
internal sealed class DiffuseField
{
    // Accurate enough for slopes, which need the change of the field by one decibel of one material's loss.
    private const double LeastShareOfShift = 1e-4;

    private readonly Cells cells;
    private readonly CellSurfaces surfaces;
    private readonly SurfaceExchange exchange;
    private readonly double[] densities; // what each facet, and the things in each cell, send out, per square metre
    private readonly Solutions? solutions; // none for slightly different losses, which are the starting point of nothing

    internal DiffuseField(Cells cells, RoomShell shell, Point3 console)
        : this(cells, shell, new SeenFrom(cells, shell.Surfaces, console), null)
    {
    }

    // The same with slightly different losses: the solution for one is the starting point for the other.
    private DiffuseField(Cells cells, RoomShell shell, SeenFrom console, Solutions? near)
    {
        double leastShare = near is null ? ExchangeSolver.LeastShare : LeastShareOfShift;
        this.cells = cells;
        surfaces = shell.Surfaces;
        exchange = shell.Exchange;
        PatchExchange patches = shell.Solver.Patches;
        using Scratch scratch = Scratch.Open();

        // A solution is kept where others start from it.
        Solutions? kept = near is null ? new Solutions(console, exchange.Count, patches.Layout.Count) : null;
        Span<double> atFirst = kept is null ? scratch.Of<double>(exchange.Count) : kept.AtFirst, first = kept is null ? scratch.Of<double>(patches.Layout.Count) : kept.First;
        Span<double> once = kept is null ? scratch.Of<double>(first.Length) : kept.Once, all = kept is null ? scratch.Of<double>(first.Length) : kept.All;
        FirstStrikes(console.Views, atFirst);
        Span<double> sent = scratch.Of<double>(patches.Layout.Count), source = scratch.Of<double>(patches.Layout.Count);
        Span<double> ofCells = scratch.Of<double>(exchange.CellCount);

        // What passes on of what strikes first, and of what strikes after a mirror; then all that follows from what is reflected of both.
        patches.GatherPassed(atFirst, sent);
        patches.Follow(sent, source);
        patches.SumCells(atFirst, ofCells);
        shell.Solver.Solve(source, ofCells, false, near?.First, leastShare, first);
        patches.GatherReflected(atFirst, first, exchange.MirroredShares, sent);
        patches.Follow(sent, source);
        shell.Solver.Solve(source, [], false, near?.Once, leastShare, once);
        patches.GatherReflected(atFirst, first, exchange.ScatteredShares, sent);
        patches.AddReflected(once, sent);
        patches.Follow(sent, source);
        shell.Solver.Solve(source, [], true, near?.All, leastShare, all);
        densities = patches.Leaving(atFirst, first, once, all);
        solutions = kept;
    }

    /// <summary>The field of the same console with slightly different losses.</summary>
    internal DiffuseField With(RoomShell shell) =>
        new(cells, shell, solutions!.Console, solutions);

    /// <summary>What the console's direct rays strike, facet by facet, share of the transmitted power.</summary>
    internal double[] AtFirst => solutions!.AtFirst;

    /// <summary>All that strikes each facet, share of the transmitted power.</summary>
    internal IReadOnlyList<double> AllStrikes(RoomShell shell) => shell.Solver.Patches.Strikes(
        solutions!.AtFirst, [.. solutions.First.Zip(solutions.Once, solutions.All).Select(three => three.First + three.Second + three.Third)]);

    /// <summary>Scalar power density at a place, per square metre, for each transmitted watt.</summary>
    internal double At(Point3 place)
    {
        int cell = cells.At(place);
        using Scratch scratch = Scratch.Open();
        return At(surfaces.Views.From(place, cell, scratch.Of<double>(surfaces.Views.Numbers(cell))));
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
            flux += views.Here * exchange.MeanOf(views.Cell, densities);
        }

        for (int h = 0; h < views.Beyond.Length; h++)
        {
            flux += views.Beyond[h] > 0 ? views.Beyond[h] * exchange.MeanOf(surfaces.BehindHoles(views.Cell)[h], densities) : 0;
        }

        if (views.Outdoors.Length > 0)
        {
            ReadOnlySpan<double> outer = densities.AsSpan(exchange.Node(Cells.Outdoors, 0), views.Outdoors.Length);
            for (int i = 0; i < outer.Length; i++)
            {
                flux += views.Outdoors[i] * outer[i];
            }
        }

        // A quarter of a scalar density strikes a surface from one side.
        return 4 * flux;
    }

    /// <summary>What a console's direct rays strike, share of the transmitted power; the rest is lost in the furnishing, or in the sky.</summary>
    /// <param name="views">What the console sees.</param>
    /// <param name="atFirst">Receives it.</param>
    private void FirstStrikes(in ViewFactors views, Span<double> atFirst)
    {
        atFirst.Clear();
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
            exchange.StrikeEvenly(surfaces.BehindHoles(views.Cell)[h], views.Beyond[h], atFirst);
        }

        for (int i = 0; i < views.Outdoors.Length; i++)
        {
            atFirst[exchange.Node(Cells.Outdoors, i)] += views.Outdoors[i];
        }
    }

    // What strikes first, and what strikes each patch in the three steps, W/m².
    private sealed class Solutions(SeenFrom console, int nodes, int patches)
    {
        internal SeenFrom Console => console;

        internal double[] AtFirst { get; } = new double[nodes];

        internal double[] First { get; } = new double[patches];

        internal double[] Once { get; } = new double[patches];

        internal double[] All { get; } = new double[patches];
    }

    // What a console sees: geometry, the same whatever the losses.
    private sealed class SeenFrom
    {
        private readonly CellSurfaces surfaces;
        private readonly int cell;
        private readonly double[] room;
        private readonly double here;

        internal SeenFrom(Cells cells, CellSurfaces surfaces, Point3 console)
        {
            (this.surfaces, cell) = (surfaces, cells.At(console));
            room = new double[surfaces.Views.Numbers(cell)];
            here = surfaces.Views.From(console, cell, room).Here;
        }

        internal ViewFactors Views => surfaces.Views.Again(cell, here, room);
    }
}
