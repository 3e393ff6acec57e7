using System.Numerics;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Paths.Body;

/// <summary>
/// Share of a path's power that the player's own body leaves, by direction: from the exact field of a plane wave at a lossy cylinder,
/// of the torso's size up to the shoulders and of the head's up to the crown (<see cref="FrontShares"/>). Tabulated over the angle
/// between where the player looks and where the path comes from, and over the path's slope; each slope when it is first needed.
/// </summary>
internal sealed class BodyShadow
{
    private const int StepDegrees = 5;

    // One step short of straight up and down, where the turn has no meaning.
    private const int GreatestSlopeDegrees = 90 - StepDegrees;
    private const int SlopeSteps = 2 * GreatestSlopeDegrees / StepDegrees;
    private const int LevelSlope = SlopeSteps / 2;

    private static readonly int TurnSteps = ScatteredMeans.Steps(Body.BehindHandsMetres);

    private readonly Complex permittivity;
    /// <summary>
    /// No factor is greater: a body beyond the hands adds at most all the power that it reflects, and over the window of the mean the two
    /// powers add.
    /// </summary>
    internal const double MostFactor = 2;

    private readonly double wavelengthMetres;
    private readonly Lazy<(SlopeRow Up, SlopeRow Down)>[] rows; // by how steep

    internal BodyShadow(Frequency frequency)
    {
        permittivity = ComplexPermittivity.Of(Body.Tissue.Dielectric, frequency);
        wavelengthMetres = frequency.WavelengthMetres;
        AbsorbingSquareMetres = Body.AbsorbingSquareMetres(permittivity, wavelengthMetres);
        rows = [.. Enumerable.Range(0, LevelSlope + 1).Select(steep => new Lazy<(SlopeRow, SlopeRow)>(() => Rows(steep * StepDegrees)))];
    }

    /// <summary>Area of a perfect absorber that absorbs as much of a diffuse field as the player, m².</summary>
    internal double AbsorbingSquareMetres { get; }

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
        SlopeRow low = Row(s0), high = Row(s0 + 1);
        if (facingDegrees is not double facing || plan == 0)
        {
            return low.Mean + ((s - s0) * (high.Mean - low.Mean));
        }

        double turn = Math.Abs(Math.IEEERemainder(double.RadiansToDegrees(Math.Atan2(y, x)) - facing, 360)) / 180 * TurnSteps;
        double lowFactor = low.At(turn), highFactor = high.At(turn);
        return lowFactor + ((s - s0) * (highFactor - lowFactor));
    }

    private SlopeRow Row(int slope) => slope >= LevelSlope ? rows[slope - LevelSlope].Value.Up : rows[LevelSlope - slope].Value.Down;

    // Up and down differ only by where the body ends: for an infinite cylinder they are the same.
    private (SlopeRow Up, SlopeRow Down) Rows(int steepDegrees)
    {
        double slope = double.DegreesToRadians(steepDegrees), distance = Body.BehindHandsMetres;
        var torso = new LossyCylinder(Body.TorsoRadiusMetres, permittivity, wavelengthMetres, slope);
        var head = new LossyCylinder(Body.HeadRadiusMetres, permittivity, wavelengthMetres, slope);
        var means = new ScatteredMeans(torso, head, distance, wavelengthMetres);
        var up = new SlopeRow(means, FrontShares.At(slope, distance, wavelengthMetres));
        return (up, steepDegrees == 0 ? up : new SlopeRow(means, FrontShares.At(-slope, distance, wavelengthMetres)));
    }

    // Shares by turn; 0 is a path that comes from where the player looks.
    private sealed class SlopeRow
    {
        private readonly double[] factors = new double[TurnSteps + 1];

        internal SlopeRow(ScatteredMeans means, FrontShares front)
        {
            for (int t = 0; t <= TurnSteps; t++)
            {
                factors[t] = means.Share(TurnSteps - t, front);
                Mean += factors[t] * (t is 0 || t == TurnSteps ? 0.5 : 1) / TurnSteps;
            }
        }

        internal double Mean { get; }

        internal double At(double turn)
        {
            int t = Math.Min((int)turn, TurnSteps - 1);
            return factors[t] + ((turn - t) * (factors[t + 1] - factors[t]));
        }
    }
}
