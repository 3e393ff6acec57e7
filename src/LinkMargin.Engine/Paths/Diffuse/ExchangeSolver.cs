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

    // In a cell that reflects more than this, such as a steel rack, the residual is followed for some reflections before it is taken
    // as uniform.
    private const double BrightShare = 0.4;
    private const int BrightFlights = 12;

    private readonly SurfaceExchange exchange;
    private readonly PowerBalance balance;
    private readonly Lazy<int[]> bright; // cells that reflect most of what strikes them

    internal ExchangeSolver(SurfaceExchange exchange, PowerBalance balance)
    {
        this.exchange = exchange;
        this.balance = balance;
        bright = new(() => [.. Enumerable.Range(0, exchange.CellCount).Where(IsBright)]);
    }

    /// <summary>All that strikes the facets, given what strikes them first.</summary>
    /// <param name="atFirst">What strikes them first.</param>
    /// <param name="withReflection">Whether it is reflected; otherwise only what passes goes on.</param>
    /// <param name="near">A starting solution; null for none.</param>
    /// <param name="leastShare">Greatest residual of the last step in each cell, as a share of what strikes there.</param>
    internal double[] Strikes(double[] atFirst, bool withReflection, double[]? near = null, double leastShare = LeastShare)
    {
        double[] strikes = near is null ? new double[exchange.Count] : [.. near];
        using Scratch scratch = Scratch.Open();
        Span<double> left = scratch.Of<double>(exchange.Count), sent = scratch.Of<double>(exchange.Count), setOut = scratch.Of<double>(exchange.CellCount);
        if (near is null)
        {
            atFirst.CopyTo(left);
        }
        else
        {
            Leave(strikes, atFirst, withReflection, sent, left);
        }

        bool isFirst = near is null;
        for (int step = 0; step < MostSteps && (isFirst || !IsSettled(left, strikes, leastShare)); step++)
        {
            isFirst = false;
            Correct(strikes, left, withReflection, sent, setOut);
            Leave(strikes, atFirst, withReflection, sent, left);
        }

        return strikes;
    }

    // The residual of a solution: what strikes the facets according to the exchange, minus the solution.
    private void Leave(ReadOnlySpan<double> strikes, ReadOnlySpan<double> atFirst, bool withReflection, Span<double> sent, Span<double> left)
    {
        exchange.Send(strikes, withReflection, sent);
        for (int i = 0; i < left.Length; i++)
        {
            left[i] = atFirst[i] - strikes[i];
        }

        for (int cell = 0; cell < exchange.CellCount; cell++)
        {
            exchange.Strike(cell, sent, left);
        }
    }

    // Adds what is reflected back and forth in bright cells; what has not settled there yet remains as the residual.
    private void GoRound(Span<double> strikes, Span<double> left, Span<double> sent)
    {
        ReadOnlySpan<double> reflects = exchange.ReflectedShares;
        foreach (int cell in bright.Value)
        {
            int things = exchange.Things(cell);
            for (int flight = 0; flight < BrightFlights; flight++)
            {
                for (int node = exchange.FirstOf(cell); node < exchange.FirstOf(cell + 1); node++)
                {
                    strikes[node] += left[node];
                    sent[node] = reflects[node] * left[node];
                    left[node] = 0;
                }

                strikes[things] += left[things];
                sent[things] = reflects[things] * left[things];
                left[things] = 0;
                exchange.Strike(cell, sent, left);
            }
        }
    }

    private bool IsBright(int cell)
    {
        ReadOnlySpan<double> reflects = exchange.ReflectedShares, areas = exchange.Areas;
        double reflected = reflects[exchange.Things(cell)] * areas[exchange.Things(cell)];
        for (int node = exchange.FirstOf(cell); node < exchange.FirstOf(cell + 1); node++)
        {
            reflected += reflects[node] * areas[node];
        }

        return reflected > BrightShare * exchange.SquareMetresOf(cell);
    }

    // Adds the residual, and all that follows from it if it spreads evenly over its cell.
    private void Correct(Span<double> strikes, Span<double> left, bool withReflection, Span<double> sent, Span<double> setOut)
    {
        if (withReflection)
        {
            GoRound(strikes, left, sent);
        }

        exchange.Send(left, withReflection, sent);
        for (int cell = 0; cell < setOut.Length; cell++)
        {
            double sum = sent[exchange.Things(cell)];
            foreach (double each in sent[exchange.FirstOf(cell)..exchange.FirstOf(cell + 1)])
            {
                sum += each;
            }

            setOut[cell] = sum;
        }

        double[] flux = withReflection ? balance.Flux(setOut) : balance.BeforeReflection(setOut);
        ReadOnlySpan<double> areas = exchange.Areas;
        for (int i = 0; i < strikes.Length; i++)
        {
            strikes[i] += left[i];
        }

        for (int cell = 0; cell < flux.Length; cell++)
        {
            for (int node = exchange.FirstOf(cell); node < exchange.FirstOf(cell + 1); node++)
            {
                strikes[node] += flux[cell] * areas[node];
            }

            strikes[exchange.Things(cell)] += flux[cell] * areas[exchange.Things(cell)];
        }
    }

    private bool IsSettled(ReadOnlySpan<double> left, ReadOnlySpan<double> strikes, double leastShare)
    {
        for (int cell = 0; cell < exchange.CellCount; cell++)
        {
            double over = Math.Abs(left[exchange.Things(cell)]), all = Math.Abs(strikes[exchange.Things(cell)]);
            for (int node = exchange.FirstOf(cell); node < exchange.FirstOf(cell + 1); node++)
            {
                over += Math.Abs(left[node]);
                all += Math.Abs(strikes[node]);
            }

            if (over > leastShare * all)
            {
                return false;
            }
        }

        return true;
    }
}
