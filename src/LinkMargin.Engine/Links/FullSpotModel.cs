using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Links;

/// <summary>The paths of every kind. The local mean is the sum of their powers.</summary>
internal sealed class FullSpotModel : SpotModel
{
    private readonly PathFinder[] finders;
    private readonly Point3 start;
    private readonly bool isBackwards; // computed from the player's end: the body is where the paths start

    internal FullSpotModel(TracedHouse house, IEnumerable<IPathSource> sources, Spot spot, bool isBackwards = false)
        : base(house.Scene, spot)
    {
        House = house;
        this.isBackwards = isBackwards;
        int[] candidates = new int[16];
        start = house.Standoff.Of(Console, ref candidates);
        finders = [.. sources.Select(source => source.From(start))];
    }

    /// <summary>The house.</summary>
    internal TracedHouse House { get; }

    /// <summary>The finder of one kind of path.</summary>
    internal TFinder Finder<TFinder>()
        where TFinder : PathFinder => finders.OfType<TFinder>().Single();

    internal override double PathLossDb(Point3 hands, double? facingDegrees, TraceBuffer buffer) =>
        PathLoss.FromPowerRatio(Find(EndsTo(hands, facingDegrees, buffer), buffer, null));

    internal override double QuickPathLossDb(Point3 hands, double? facingDegrees, LinkTrace trace)
    {
        LinkEnds ends = EndsTo(hands, facingDegrees, trace.Buffer);
        var found = new FoundPaths(null);
        foreach (PathFinder finder in finders)
        {
            if (finder.IsQuick)
            {
                finder.FindTo(ends, 0, trace.Buffer, ref found);
            }
        }

        return PathLoss.FromPowerRatio(found.Power);
    }

    internal override BegunLink Begin(Point3 hands, double? facingDegrees, LinkTrace trace)
    {
        LinkEnds ends = EndsTo(hands, facingDegrees, trace.Buffer);
        double power = AlwaysPower(ends, trace.Buffer);
        return new BegunLink(ends, power, PathLoss.FromPowerRatio(power));
    }

    internal override double FinishDb(in BegunLink begun, double enoughDb, LinkTrace trace)
    {
        double enough = Decibels.ToPowerRatio(-enoughDb), power = begun.Power, least = power * PathFinder.LeastShare;
        if (double.IsFinite(enough) && trace.LikelyMirrors.Length > 0)
        {
            var some = new FoundPaths(null) { Enough = enough - power, OnlyMirrors = trace.LikelyMirrors };
            double likely = power + OptionalPower(begun.Ends, least, isSlow: true, some, trace.Buffer);
            if (likely >= enough)
            {
                return PathLoss.FromPowerRatio(likely);
            }
        }

        foreach (PathFinder finder in finders)
        {
            if (finder.AlwaysCounts)
            {
                continue;
            }

            List<int>? counting = finder.VariesSlowly ? [] : null;
            var found = new FoundPaths(null) { Enough = enough - power, CountingMirrors = counting };
            finder.FindTo(begun.Ends, least, trace.Buffer, ref found);
            power += found.Power;
            trace.LikelyMirrors = counting is null ? trace.LikelyMirrors : [.. counting];
        }

        return PathLoss.FromPowerRatio(power);
    }

    internal override bool HasSlowPaths => true;

    // By the direct path and the diffuse field.
    private double AlwaysPower(in LinkEnds ends, TraceBuffer buffer)
    {
        var found = new FoundPaths(null);
        foreach (PathFinder finder in finders)
        {
            if (finder.AlwaysCounts)
            {
                finder.FindTo(ends, 0, buffer, ref found);
            }
        }

        return found.Power;
    }

    internal override PowerParts PartsWithoutSlow(Point3 hands, TraceBuffer buffer)
    {
        LinkEnds ends = EndsTo(hands, null, buffer);
        double always = AlwaysPower(ends, buffer);
        return new PowerParts(always, OptionalPower(ends, always * PathFinder.LeastShare, isSlow: false, new FoundPaths(null), buffer));
    }

    internal override double SlowPower(Point3 hands, double leastPower, int[]? onlyMirrors, List<int>? counting, TraceBuffer buffer) =>
        OptionalPower(
            EndsTo(hands, null, buffer), leastPower, isSlow: true, new FoundPaths(null) { OnlyMirrors = onlyMirrors, CountingMirrors = counting }, buffer);

    private double OptionalPower(in LinkEnds ends, double leastPower, bool isSlow, FoundPaths found, TraceBuffer buffer)
    {
        foreach (PathFinder finder in finders)
        {
            if (!finder.AlwaysCounts && finder.VariesSlowly == isSlow)
            {
                finder.FindTo(ends, leastPower, buffer, ref found);
            }
        }

        return found.Power;
    }

    internal override IReadOnlyList<PathBudget> Paths(Point3 hands, double? facingDegrees)
    {
        var buffer = new TraceBuffer();
        var budgets = new List<PathBudget>();
        LinkEnds ends = EndsTo(hands, facingDegrees, buffer);
        Find(ends, buffer, path => budgets.Add(path.Itemise(ends, buffer)));
        return [.. budgets.OrderBy(path => path.LossDb)];
    }

    internal override void Record(Point3 hands, double? facingDegrees, bool isSeatShared, IGradientRecorder recorder)
    {
        var buffer = new TraceBuffer();
        var gradients = new LossGradients(House.Losses, recorder);
        LinkEnds ends = EndsTo(hands, facingDegrees, buffer) with { IsPlayerShared = isBackwards || isSeatShared };
        Find(ends, buffer, path =>
        {
            recorder.Begin(path.Power);
            path.AddGradients(ends, buffer, gradients);
        });
    }

    // Every link gets its ends here, off the surfaces around them.
    private LinkEnds EndsTo(Point3 hands, double? facingDegrees, TraceBuffer buffer) =>
        new(start, House.Standoff.Of(hands, ref buffer.Candidates), facingDegrees, isBackwards);

    // Finds the paths, always in the same order; returns the sum. What always counts comes first. Every other kind
    // is summed by itself, as in a field, which computes them one after the other.
    private double Find(in LinkEnds ends, TraceBuffer buffer, Action<IFoundPath>? each)
    {
        var always = new FoundPaths(each);
        double power = 0, least = 0;
        foreach (PathFinder finder in finders)
        {
            if (finder.AlwaysCounts)
            {
                finder.FindTo(ends, 0, buffer, ref always);
                power = always.Power;
                least = power * PathFinder.LeastShare;
                continue;
            }

            var found = new FoundPaths(each);
            finder.FindTo(ends, least, buffer, ref found);
            power += found.Power;
        }

        return power;
    }
}
