namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// Solves the exchange of power between facets: I = Fᵀ·e + what strikes first, with e = R·I + T·I′. By steps: what one step leaves over
/// is spread evenly over its cell, where <see cref="PowerBalance"/> knows the rest of its life, and the next step corrects that.
/// </summary>
internal sealed class ExchangeSolver
{
    /// <summary>What the last step may leave over in each cell, as a share of what strikes there.</summary>
    internal const double LeastShare = 1e-12;

    private const int MostSteps = 200;

    // In a cell that reflects more than this, such as a steel rack, what is left over goes round by itself for some flights before it
    // is taken for even.
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

    /// <summary>All that strikes the facets in the end, of what strikes them first.</summary>
    /// <param name="atFirst">What strikes them first.</param>
    /// <param name="withReflection">Whether it is reflected; otherwise only what passes goes on.</param>
    /// <param name="near">A first answer; null for none.</param>
    /// <param name="leastShare">What the last step may leave over in each cell, as a share of what strikes there.</param>
    internal double[] Strikes(double[] atFirst, bool withReflection, double[]? near = null, double leastShare = LeastShare)
    {
        double[] strikes = near is null ? new double[exchange.Count] : [.. near];
        double[] left = near is null ? atFirst : Left(strikes, atFirst, withReflection);
        for (int step = 0; step < MostSteps && !(step > 0 && IsSettled(left, strikes, leastShare)); step++)
        {
            Correct(strikes, left, withReflection);
            left = Left(strikes, atFirst, withReflection);
        }

        return strikes;
    }

    // What an answer leaves over: what strikes by it, less what it says strikes.
    private double[] Left(double[] strikes, double[] atFirst, bool withReflection)
    {
        double[] left = exchange.Struck(exchange.Sent(strikes, withReflection));
        for (int i = 0; i < left.Length; i++)
        {
            left[i] += atFirst[i] - strikes[i];
        }

        return left;
    }

    // Adds what goes round in bright cells, and leaves over what has not settled there yet.
    private void GoRound(double[] strikes, double[] left)
    {
        var sent = new double[exchange.Count];
        foreach (int cell in bright.Value)
        {
            int things = exchange.Things(cell);
            for (int flight = 0; flight < BrightFlights; flight++)
            {
                for (int node = exchange.FirstOf(cell); node < exchange.FirstOf(cell + 1); node++)
                {
                    strikes[node] += left[node];
                    sent[node] = exchange.ReflectedShare(node) * left[node];
                    left[node] = 0;
                }

                strikes[things] += left[things];
                sent[things] = exchange.ReflectedShare(things) * left[things];
                left[things] = 0;
                exchange.Strike(cell, sent, left);
            }
        }
    }

    private bool IsBright(int cell)
    {
        double reflected = exchange.ReflectedShare(exchange.Things(cell)) * exchange.SquareMetres(exchange.Things(cell));
        for (int node = exchange.FirstOf(cell); node < exchange.FirstOf(cell + 1); node++)
        {
            reflected += exchange.ReflectedShare(node) * exchange.SquareMetres(node);
        }

        return reflected > BrightShare * exchange.SquareMetresOf(cell);
    }

    // Adds what is left over, and what becomes of it if it spreads evenly over its cell.
    private void Correct(double[] strikes, double[] left, bool withReflection)
    {
        if (withReflection)
        {
            left = [.. left];
            GoRound(strikes, left);
        }

        double[] sent = exchange.Sent(left, withReflection);
        var setOut = new double[exchange.CellCount];
        for (int cell = 0; cell < setOut.Length; cell++)
        {
            setOut[cell] = sent[exchange.Things(cell)];
            for (int node = exchange.FirstOf(cell); node < exchange.FirstOf(cell + 1); node++)
            {
                setOut[cell] += sent[node];
            }
        }

        double[] flux = withReflection ? balance.Flux(setOut) : balance.BeforeReflection(setOut);
        for (int i = 0; i < strikes.Length; i++)
        {
            strikes[i] += left[i];
        }

        for (int cell = 0; cell < setOut.Length; cell++)
        {
            for (int node = exchange.FirstOf(cell); node < exchange.FirstOf(cell + 1); node++)
            {
                strikes[node] += flux[cell] * exchange.SquareMetres(node);
            }

            strikes[exchange.Things(cell)] += flux[cell] * exchange.SquareMetres(exchange.Things(cell));
        }
    }

    private bool IsSettled(double[] left, double[] strikes, double leastShare)
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
