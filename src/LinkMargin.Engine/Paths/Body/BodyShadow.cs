using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Body;

/// <summary>
/// What a player's own body leaves of a path that arrives from a direction: the torso and head of <see cref="Body"/> met by
/// the same edge model as any obstacle, from far away. Tabulated over the angle between where the player looks and where the
/// path comes from, and over the path's slope.
/// </summary>
internal sealed class BodyShadow
{
    private const int StepDegrees = 5;
    private const int TurnSteps = 180 / StepDegrees;

    // One step short of straight up and down, where no turn has a meaning.
    private const int GreatestSlopeDegrees = 90 - StepDegrees;
    private const int SlopeSteps = 2 * GreatestSlopeDegrees / StepDegrees;
    private const double FarMetres = 6;

    private readonly double[,] factors = new double[TurnSteps + 1, SlopeSteps + 1];
    private readonly double[] means = new double[SlopeSteps + 1];

    internal BodyShadow(double wavelengthMetres)
    {
        // Between floor and ceiling far away: what matters is what passes round the body, on all sides of it.
        var level = new Level("level", -FarMetres, 3 * FarMetres);
        FixtureBox[] boxes = [.. Body.Of(0, default, FarMetres, 0, "player").Select(f => new FixtureBox(f, level, 0, 0, -1, 0))];
        var buffer = new TraceBuffer();
        for (int s = 0; s <= SlopeSteps; s++)
        {
            double slope = double.DegreesToRadians(-GreatestSlopeDegrees + (StepDegrees * s));
            for (int t = 0; t <= TurnSteps; t++)
            {
                double turn = double.DegreesToRadians(StepDegrees * t);
                factors[t, s] = Factor(boxes, buffer, wavelengthMetres, turn, slope);
                means[s] += factors[t, s] * (t is 0 or TurnSteps ? 0.5 : 1) / TurnSteps;
            }
        }

        Diffuse = DiffuseMean();
    }

    /// <summary>Mean over all directions of the sphere: what the body leaves of a diffuse field.</summary>
    internal double Diffuse { get; }

    /// <summary>Share of a path's power that is left.</summary>
    /// <param name="from">Where its last leg comes from, unfolded.</param>
    /// <param name="hands">Where it arrives.</param>
    /// <param name="facingDegrees">Where the player looks; null for the mean over all directions.</param>
    internal double Factor(Point3 from, Point3 hands, double? facingDegrees)
    {
        double x = from.X - hands.X, y = from.Y - hands.Y, plan = double.Hypot(x, y);
        double slope = double.RadiansToDegrees(Math.Atan2(from.Z - hands.Z, plan));
        double s = Math.Clamp((slope + GreatestSlopeDegrees) / StepDegrees, 0, SlopeSteps);
        int s0 = Math.Min((int)s, SlopeSteps - 1);
        if (facingDegrees is not double facing || plan == 0)
        {
            return means[s0] + ((s - s0) * (means[s0 + 1] - means[s0]));
        }

        double turn = Math.Abs(Math.IEEERemainder(double.RadiansToDegrees(Math.Atan2(y, x)) - facing, 360)) / StepDegrees;
        int t0 = Math.Min((int)turn, TurnSteps - 1);
        double low = factors[t0, s0] + ((s - s0) * (factors[t0, s0 + 1] - factors[t0, s0]));
        double high = factors[t0 + 1, s0] + ((s - s0) * (factors[t0 + 1, s0 + 1] - factors[t0 + 1, s0]));
        return low + ((turn - t0) * (high - low));
    }

    private static double Factor(FixtureBox[] boxes, TraceBuffer buffer, double wavelengthMetres, double turn, double slope)
    {
        double plan = FarMetres * Math.Cos(slope);
        var ray = new Ray(
            new Point3(plan * Math.Cos(turn), plan * Math.Sin(turn), FarMetres * Math.Sin(slope)), default, wavelengthMetres);
        buffer.PieceCount = 0;
        foreach (FixtureBox box in boxes)
        {
            BoxFront.Gather(box, ray, Fold.None, buffer);
        }

        using Scratch scratch = Scratch.Open();
        Span<double> amplitudes = scratch.Of<double>(buffer.PieceCount);
        amplitudes.Fill(Body.Amplitude);
        return FrontSum.PowerRatio(buffer.Pieces, amplitudes);
    }

    private double DiffuseMean()
    {
        double sum = 0, all = 0;
        for (int s = 0; s <= SlopeSteps; s++)
        {
            double weight = Math.Cos(double.DegreesToRadians(-GreatestSlopeDegrees + (StepDegrees * s)));
            sum += weight * means[s];
            all += weight;
        }

        return sum / all;
    }
}
