using LinkMargin.Engine.Wavefront;
using Xunit.Abstractions;
using Rectangle = LinkMargin.Engine.Tests.Judges.ApertureIntegral.Rectangle;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// <see cref="FrontSum"/> for two planes one behind the other, against the integral over both.
/// <para>
/// Each plane has its own v; the front sum lays both over each other, v upon v, and multiplies. That is exact where the planes
/// are near each other (ρ to 1) and an approximation elsewhere: ρ is 0.5 where three equal legs lie before, between and behind
/// them, 0.3 where the middle one is more than twice as long. What is compared, and why both are averaged over the same places,
/// says <see cref="FrontSumApertureTests"/>.
/// </para>
/// <para>
/// What is not compared: two opaque half planes from opposite sides that overlap. The front sum lets nothing at all through
/// there, where the integral has −15 to −30 dB winding round both edges. What arrives behind such a baffle in a house is left to
/// ways round beyond the front's reach and to the diffuse field.
/// </para>
/// </summary>
public sealed class FrontSumTwoPlanesTests(ITestOutputHelper output)
{
    private const double Everywhere = double.PositiveInfinity;
    private const double Moved = 0.8, Farthest = 2.2;
    private const int Cases = 12;

    // Near each other, as apart as two rooms' walls from a link across both, and farther.
    public static TheoryData<double> Rhos => new(0.98, 0.7, 0.5, 0.3);

    // What one partition lets through is in step with the line, so the waves of both edges add to it as they do in one plane,
    // with the tolerances of one plane. What is bent twice, where a product of both would be wrong, is 12 dB and more down.
    [Theory]
    [MemberData(nameof(Rhos))]
    public void Partitions_from_one_side(double rho) => Compare(
        rho, 0.4, 0.6, 3, r => ([Below(Place(r), Light(r))], [Below(Place(r), Light(r))]));

    [Theory]
    [MemberData(nameof(Rhos))]
    public void Partitions_from_both_sides(double rho) => Compare(
        rho, 0.4, 0.6, 3, r => ([Below(Place(r), Light(r))], [Above(Place(r), Light(r))]));

    [Theory]
    [MemberData(nameof(Rhos))]
    public void A_partition_with_a_piece_of_furniture_behind_it(double rho) => Compare(rho, 0.4, 0.8, 3, r =>
    {
        double from = Place(r), to = Place(r);
        return ([Below(Place(r), Light(r))], [new Rectangle(Math.Min(from, to), Math.Max(from, to), -Everywhere, Everywhere, Light(r))]);
    });

    // As a slit in one plane, which equation (31) makes 1 dB too dark in the mean.
    [Theory]
    [MemberData(nameof(Rhos))]
    public void Opaque_walls_from_both_sides_that_leave_a_passage(double rho) => Compare(rho, 1.4, 1.5, 3, r =>
    {
        double from = Place(r), to = Place(r);
        return ([Below(Math.Min(from, to), 0)], [Above(Math.Max(from, to) + 0.3, 0)]);
    });

    [Theory]
    [MemberData(nameof(Rhos))]
    public void Of_two_opaque_edges_on_one_side_the_larger_counts(double rho)
    {
        // The exact loss is above that of the larger edge alone, by less than the other would take as a knife edge of its own
        // (as if the first were its source; Epstein and Peterson count it so and are known to be too high near ρ = 1).
        var random = new Random(13_04);
        for (int i = 0; i < Cases; i++)
        {
            double one = Place(random), other = Place(random);
            double exactDb = Db(ApertureIntegral.MeanPowerOfTwo([Below(one, 0)], [Below(other, 0)], rho, Moved));
            double oursDb = Db(OursMean([Below(one, 0)], [Below(other, 0)], rho));
            double lesserDb = -Db(ApertureIntegral.MeanPower([Below(Math.Min(one, other), 0)], Moved));
            output.WriteLine(FormattableString.Invariant($"edges {one:0.00} and {other:0.00}: integral {exactDb:0.0} dB, ours {oursDb:0.0} dB, the lesser alone {lesserDb:0.0} dB"));
            Assert.InRange(oursDb - exactDb, -1, Math.Max(0, lesserDb) + 1);
        }
    }

    private void Compare(
        double rho, double meanDb, double rmsDb, double singleDb, Func<Random, (Rectangle[] First, Rectangle[] Second)> make)
    {
        var random = new Random(13_03);
        var gaps = new List<(double Db, string Where)>();
        for (int i = 0; i < Cases; i++)
        {
            (Rectangle[] first, Rectangle[] second) = make(random);
            double exact = Db(ApertureIntegral.MeanPowerOfTwo(first, second, rho, Moved)), ours = Db(OursMean(first, second, rho));
            gaps.Add((ours - exact, $"{exact:0.0} dB behind {string.Join(" ", first.Concat(second))}"));
        }

        FrontGaps.Hold(output, gaps, meanDb, rmsDb, singleDb);
    }

    private static double OursMean(Rectangle[] first, Rectangle[] second, double rho) =>
        ApertureIntegral.Places(Moved).Average(moved => FrontSum.PowerRatio(
            [.. first.Select(s => PieceOf(s, 0, rho * moved)), .. second.Select(s => PieceOf(s, 1, moved))],
            [.. first.Concat(second).Select(s => s.Amplitude)],
            FrontReach.Usual));

    private static Piece PieceOf(Rectangle screen, int plane, double moved) => new()
    {
        Low = screen.Left - moved,
        High = screen.Right - moved,
        Bottom = screen.Bottom,
        Top = screen.Top,
        Plane = plane,
    };

    private static Rectangle Below(double v, double amplitude) => new(-Everywhere, v, -Everywhere, Everywhere, amplitude);

    private static Rectangle Above(double v, double amplitude) => new(v, Everywhere, -Everywhere, Everywhere, amplitude);

    // From one sheet of board (1 dB) to brick (10 dB).
    private static double Light(Random random) => 0.3 + (0.6 * random.NextDouble());

    private static double Place(Random random) => Farthest * ((2 * random.NextDouble()) - 1);

    private static double Db(double power) => 10 * Math.Log10(power);
}
