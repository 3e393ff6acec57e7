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

    internal override bool HasOptionalPaths => true;

    internal override double GreatestPathLossDb(Point3 hands, double? facingDegrees, TraceBuffer buffer) =>
        PathLoss.FromPowerRatio(AlwaysPower(EndsTo(hands, facingDegrees), buffer));

    private double AlwaysPower(in LinkEnds ends, TraceBuffer buffer)
    {
        var found = new FoundPaths(null);
        FindAlways(ends, buffer, ref found);
        return found.Power;
    }

    // The direct path and the diffuse field.
    private void FindAlways(in LinkEnds ends, TraceBuffer buffer, ref FoundPaths found)
    {
        foreach (PathFinder finder in finders)
        {
            if (finder.AlwaysCounts)
            {
                finder.FindTo(ends, 0, buffer, ref found);
            }
        }
    }

    internal override double AlwaysPower(Point3 hands, TraceBuffer buffer) => AlwaysPower(EndsTo(hands, null), buffer);

    internal override double OptionalPower(Point3 hands, double leastPower, int[]? onlyMirrors, List<int>? counting, TraceBuffer buffer)
    {
        var found = new FoundPaths(null) { OnlyMirrors = onlyMirrors, CountingMirrors = counting };
        FindOptional(EndsTo(hands, null), leastPower, buffer, ref found);
        return found.Power;
    }

    private void FindOptional(in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found)
    {
        foreach (PathFinder finder in finders)
        {
            if (!finder.AlwaysCounts)
            {
                finder.FindTo(ends, leastPower, buffer, ref found);
            }
        }
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

    // Finds the paths, always in the same order, until their power is enough; returns the sum. What always counts comes first. The optional
    // kinds are summed by themselves, as in a field, which computes them later.
    private double Find(in LinkEnds ends, TraceBuffer buffer, Action<IFoundPath>? each, double enough = double.PositiveInfinity)
    {
        var always = new FoundPaths(each);
        FindAlways(ends, buffer, ref always);
        var optional = new FoundPaths(each) { Enough = enough - always.Power };
        FindOptional(ends, always.Power * PathFinder.LeastShare, buffer, ref optional);
        return always.Power + optional.Power;
    }
}
