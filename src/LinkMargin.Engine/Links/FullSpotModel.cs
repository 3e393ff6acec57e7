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
    private readonly bool isBackwards; // computed from the player's end: the body is where the paths start

    internal FullSpotModel(TracedHouse house, IEnumerable<IPathSource> sources, Spot spot, bool isBackwards = false)
        : base(house.Scene, spot)
    {
        House = house;
        this.isBackwards = isBackwards;
        finders = [.. sources.Select(source => source.From(Console))];
    }

    /// <summary>The house.</summary>
    internal TracedHouse House { get; }

    /// <summary>The finder of one kind of path.</summary>
    internal TFinder Finder<TFinder>()
        where TFinder : PathFinder => finders.OfType<TFinder>().Single();

    internal override double PathLossDb(
        Point3 hands, double? facingDegrees, TraceBuffer buffer, double enoughDb = double.NegativeInfinity) =>
        PathLoss.FromPowerRatio(Find(EndsTo(hands, facingDegrees), buffer, null, Decibels.ToPowerRatio(-enoughDb)));

    internal override bool HasSlowPaths => true;

    internal override double GreatestPathLossDb(Point3 hands, double? facingDegrees, TraceBuffer buffer) =>
        PathLoss.FromPowerRatio(AlwaysPower(EndsTo(hands, facingDegrees), buffer));

    internal override double AlwaysPower(Point3 hands, TraceBuffer buffer) => AlwaysPower(EndsTo(hands, null), buffer);

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

    internal override double PowerWithoutSlow(Point3 hands, double always, TraceBuffer buffer)
    {
        var found = new FoundPaths(null, always);
        FindOptional(hands, always, withSlow: false, buffer, ref found);
        return found.Power;
    }

    internal override double Power(
        Point3 hands, double always, int[]? onlyMirrors, List<int>? counting, TraceBuffer buffer, out double slow)
    {
        var found = new FoundPaths(null, always) { OnlyMirrors = onlyMirrors, CountingMirrors = counting };
        slow = FindOptional(hands, always, withSlow: true, buffer, ref found);
        return found.Power;
    }

    // Returns the power of the slow ones.
    private double FindOptional(Point3 hands, double always, bool withSlow, TraceBuffer buffer, ref FoundPaths found)
    {
        LinkEnds ends = EndsTo(hands, null);
        double slow = 0;
        if (withSlow)
        {
            // Reflections interfere with the straight line, whose finder leaves the factors in the buffer.
            var straight = new FoundPaths(null);
            finders[0].FindTo(ends, 0, buffer, ref straight);
        }

        foreach (PathFinder finder in finders)
        {
            if (finder.AlwaysCounts || (finder.VariesSlowly && !withSlow))
            {
                continue;
            }

            double before = found.Power;
            finder.FindTo(ends, always * PathFinder.LeastShare, buffer, ref found);
            slow += finder.VariesSlowly ? found.Power - before : 0;
        }

        return slow;
    }

    internal override IReadOnlyList<PathBudget> Paths(Point3 hands, double? facingDegrees)
    {
        var buffer = new TraceBuffer();
        var budgets = new List<PathBudget>();
        LinkEnds ends = EndsTo(hands, facingDegrees);
        Find(ends, buffer, path => budgets.Add(path.Itemise(ends, buffer)));
        return [.. budgets.OrderBy(path => path.LossDb)];
    }

    internal override void Record(Point3 hands, double? facingDegrees, IGradientRecorder recorder)
    {
        var buffer = new TraceBuffer();
        var gradients = new LossGradients(House.Losses, recorder);
        LinkEnds ends = EndsTo(hands, facingDegrees);
        Find(ends, buffer, path =>
        {
            recorder.Begin(path.Power);
            path.AddGradients(ends, buffer, gradients);
        });
    }

    private LinkEnds EndsTo(Point3 hands, double? facingDegrees) => new(Console, hands, facingDegrees, isBackwards);

    // Finds the paths, always in the same order, until their power is enough; returns the sum.
    private double Find(in LinkEnds ends, TraceBuffer buffer, Action<IFoundPath>? each, double enough = double.PositiveInfinity)
    {
        var found = new FoundPaths(each) { Enough = enough };
        double least = 0;
        foreach (PathFinder finder in finders)
        {
            finder.FindTo(ends, least, buffer, ref found);
            least = finder.AlwaysCounts ? found.Power * PathFinder.LeastShare : least;
        }

        return found.Power;
    }
}
