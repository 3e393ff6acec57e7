using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// Solves the exchange of power between facets: I = Fᵀ·e + what strikes first, with e = R·I + T·I′. It iterates: the residual of one
/// step is spread evenly over its cell, where <see cref="PowerBalance"/> gives all that follows from it, and the next step corrects that.
/// </summary>
internal sealed class ExchangeSolver
{
    /// <summary>Greatest residual of the last step in each cell, as a share of what strikes there.</summary>
    internal const double LeastShare = 1e-12;

    private const int MostSteps = 200;

    // Between a cell that reflects more than this, such as a steel rack, and the cells behind what lets this much through, power goes to and
    // fro between a few patches. No even spread corrects that, so the residual is followed for some flights first.
    private const double BrightShare = 0.4;
    private const double ClearShare = 0.05;
    private const int BrightFlights = 3;

    private readonly SurfaceExchange exchange;
    private readonly PowerBalance balance;
    private readonly Lazy<PatchExchange> patches;
    private readonly Lazy<int[]> bright; // bright cells and those behind them

    internal ExchangeSolver(SurfaceExchange exchange, PowerBalance balance)
    {
        this.exchange = exchange;
        this.balance = balance;
        patches = new(() => new PatchExchange(exchange));
        bright = new(() =>
        [
            .. Enumerable.Range(0, exchange.CellCount)
                .Where(cell => patches.Value.ReflectedShare(cell) > BrightShare)
                .SelectMany(cell => patches.Value.CellsBehind(cell, ClearShare).Prepend(cell))
                .Distinct().Order(),
        ]);
    }

    /// <summary>The exchange it solves.</summary>
    internal PatchExchange Patches => patches.Value;

    /// <summary>Computes what strikes each patch, and the things in each cell, with all that follows from it, W/m².</summary>
    /// <param name="source">What strikes them without it.</param>
    /// <param name="ofCells">What else strikes each cell, W, for the accuracy of small parts; empty for nothing.</param>
    /// <param name="withReflection">Whether it is reflected; otherwise only what passes goes on.</param>
    /// <param name="near">A starting solution; null for none.</param>
    /// <param name="leastShare">Greatest residual of the last step in each cell, as a share of what strikes there.</param>
    /// <param name="strikes">Receives the solution.</param>
    /// <returns>How many steps it took.</returns>
    internal int Solve(
        ReadOnlySpan<double> source, ReadOnlySpan<double> ofCells, bool withReflection, double[]? near, double leastShare, Span<double> strikes)
    {
        using Scratch scratch = Scratch.Open();
        Span<double> left = scratch.Of<double>(source.Length), sent = scratch.Of<double>(source.Length), round = scratch.Of<double>(source.Length);
        Span<double> cells = scratch.Of<double>(2 * exchange.CellCount);
        if (near is null)
        {
            strikes.Clear();
            source.CopyTo(left);
        }
        else
        {
            near.CopyTo(strikes);
            Leave(strikes, source, withReflection, sent, left);
        }

        int steps = 0;
        for (; steps < MostSteps && !IsSettled(left, strikes, ofCells, leastShare); steps++)
        {
            Correct(strikes, left, withReflection, sent, round, cells);
            Leave(strikes, source, withReflection, sent, left);
        }

        // Where next to nothing strikes, a correction may leave less than nothing, within the accuracy.
        foreach (ref double strike in strikes)
        {
            strike = Math.Max(0, strike);
        }

        return steps;
    }

    // The residual of a solution: what strikes according to the exchange, minus the solution.
    private void Leave(ReadOnlySpan<double> strikes, ReadOnlySpan<double> source, bool withReflection, Span<double> sent, Span<double> left)
    {
        for (int i = 0; i < left.Length; i++)
        {
            left[i] = source[i] - strikes[i];
        }

        for (int cell = 0; cell < exchange.CellCount; cell++)
        {
            patches.Value.Send(cell, strikes, withReflection, sent);
            patches.Value.Strike(cell, sent, left);
        }
    }

    // Adds what goes to and fro around bright cells; what has not settled there yet remains as the residual.
    private void GoRound(Span<double> strikes, Span<double> left, Span<double> sent, Span<double> round)
    {
        if (bright.Value.Length == 0)
        {
            return;
        }

        // What is left in other cells is not their business yet.
        PatchLayout layout = patches.Value.Layout;
        round.Clear();
        foreach (int cell in bright.Value)
        {
            left[layout.FirstOf(cell)..layout.FirstOf(cell + 1)].CopyTo(round[layout.FirstOf(cell)..]);
        }

        for (int flight = 0; flight < BrightFlights; flight++)
        {
            foreach (int cell in bright.Value)
            {
                patches.Value.Send(cell, round, true, sent);
            }

            foreach (int cell in bright.Value)
            {
                for (int i = layout.FirstOf(cell); i < layout.FirstOf(cell + 1); i++)
                {
                    strikes[i] += round[i];
                    round[i] = 0;
                }

                patches.Value.Strike(cell, sent, round);
            }
        }

        foreach (int cell in bright.Value)
        {
            round[layout.FirstOf(cell)..layout.FirstOf(cell + 1)].CopyTo(left[layout.FirstOf(cell)..]);
        }
    }

    // Adds the residual, and all that follows from it if it spreads evenly over its cell.
    private void Correct(Span<double> strikes, Span<double> left, bool withReflection, Span<double> sent, Span<double> round, Span<double> cells)
    {
        if (withReflection)
        {
            GoRound(strikes, left, sent, round);
        }

        PatchLayout layout = patches.Value.Layout;
        Span<double> setOut = cells[..exchange.CellCount], flux = cells[exchange.CellCount..];
        for (int cell = 0; cell < setOut.Length; cell++)
        {
            setOut[cell] = patches.Value.Send(cell, left, withReflection, sent);
        }

        balance.Correct(setOut, withReflection, flux);
        for (int cell = 0; cell < flux.Length; cell++)
        {
            for (int i = layout.FirstOf(cell); i < layout.FirstOf(cell + 1); i++)
            {
                strikes[i] += left[i] + flux[cell];
            }
        }
    }

    private bool IsSettled(ReadOnlySpan<double> left, ReadOnlySpan<double> strikes, ReadOnlySpan<double> ofCells, double leastShare)
    {
        PatchLayout layout = patches.Value.Layout;
        ReadOnlySpan<double> squareMetres = patches.Value.SquareMetres;
        for (int cell = 0; cell < exchange.CellCount; cell++)
        {
            double over = 0, all = ofCells.Length > 0 ? ofCells[cell] : 0;
            for (int i = layout.FirstOf(cell); i < layout.FirstOf(cell + 1); i++)
            {
                over += squareMetres[i] * Math.Abs(left[i]);
                all += squareMetres[i] * Math.Abs(strikes[i]);
            }

            if (over > leastShare * all)
            {
                return false;
            }
        }

        return true;
    }
}
