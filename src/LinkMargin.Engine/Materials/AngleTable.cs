using System.Numerics;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Materials;

/// <summary>
/// What a material does to a wave at each angle. Its table loss sets the level, at normal incidence or as the mean over angles, as
/// the row says; its layers and studs, where the table gives them, set the change with the angle and what is reflected.
/// </summary>
internal sealed class AngleTable
{
    /// <summary>Loss from which a material without stated layers counts as metal, where its row does not say, dB.</summary>
    internal const double MetalLossDb = 14;

    /// <summary>Share of power that metal reflects: a sheet with its joints and holes; from memory.</summary>
    internal const double MetalReflectance = 0.85;

    /// <summary>Share of power that other materials without stated layers reflect: near that of board and timber; from memory.</summary>
    internal const double PlainReflectance = 0.12;

    // η of plasterboard at 2.44 GHz, Recommendation ITU-R P.2040-3, Table 3.
    private static readonly Complex Board = new(2.73, -0.145);

    private const int Steps = 256; // in the cosine: 0.02 dB at worst between two of them up to 80°

    private readonly double shiftDb; // how much more it loses than the table it was made from
    private readonly bool isLayered;
    private readonly double[] lossDb = new double[Steps + 1];
    private readonly double[] amplitude = new double[Steps + 1];
    private readonly double[] reflectance = new double[Steps + 1];
    private readonly Complex[] inStep = new Complex[Steps + 1];
    private AngleTable? shifted;

    internal AngleTable(Material material, Band band)
    {
        double baseDb = material.ThroughDb ?? material.LossDb;
        Layer[] layers = LayersOf(material);
        isLayered = layers.Length > 0;
        Basis = material.ThroughDb is not null ? LossBasis.Through
            : layers.Length == 0 ? LossBasis.Listed
            : material.Angle == LossAngle.Mean ? LossBasis.MeanAndLayers
            : LossBasis.HeadOnAndLayers;
        if (!isLayered)
        {
            Fill(baseDb, material.Reflects ?? (baseDb >= MetalLossDb ? SheetReflection.Metal : SheetReflection.Board));
        }
        else
        {
            var panel = new LayeredPanel(layers, band);
            double layersDb = material.Angle == LossAngle.Mean
                ? -Decibels.FromPowerRatio(panel.DiffuseTransmittance) + RibsDb(material.Ribs, Math.Cos(Math.PI / 4))
                : panel.AtCosine(1).TransmissionLossDb + RibsDb(material.Ribs, 1);
            Fill(baseDb - layersDb, material.Ribs, panel);
        }

        (DiffuseTransmittance, DiffuseReflectance) = DiffuseMeans();
    }

    // The same material with more or less loss at every angle; its reflection stays as far as conservation of energy allows.
    private AngleTable(AngleTable table, double moreDb)
    {
        shiftDb = moreDb;
        isLayered = table.isLayered;
        Basis = table.Basis;
        ToleranceSpreadDb = table.ToleranceSpreadDb;
        for (int i = 0; i <= Steps; i++)
        {
            double db = Math.Clamp(table.lossDb[i] + moreDb, 0, LayeredSlab.GreatestLossDb);
            Set(i, db, table.reflectance[i], table.inStep[i]);
        }

        (DiffuseTransmittance, DiffuseReflectance) = DiffuseMeans();
    }

    /// <summary>Where its losses come from.</summary>
    internal LossBasis Basis { get; }

    /// <summary>Share of a diffuse field's power that passes.</summary>
    internal double DiffuseTransmittance { get; }

    /// <summary>Share of a diffuse field's power that is reflected.</summary>
    internal double DiffuseReflectance { get; }

    /// <summary>Share of a diffuse field's power that is turned to heat.</summary>
    internal double DiffuseAbsorptance => Math.Max(0, 1 - DiffuseTransmittance - DiffuseReflectance);

    /// <summary>
    /// Spread of the loss from place to place because the depth of cavities and boards varies, dB: root mean square over a diffuse
    /// field's angles. 0 where no layers are stated.
    /// </summary>
    internal double ToleranceSpreadDb { get; private set; }

    /// <summary>Loss at an angle, dB.</summary>
    internal double LossDb(double cosIncidence) => Read(lossDb, cosIncidence);

    /// <summary>Amplitude that passes at an angle.</summary>
    internal double Amplitude(double cosIncidence) => Read(amplitude, cosIncidence);

    /// <summary>Share of power reflected at an angle.</summary>
    internal double Reflectance(double cosIncidence) => Read(reflectance, cosIncidence);

    /// <summary>
    /// Share of power reflected at an angle, and the coherent part: the reflected electric field along the incident one, mean over both
    /// polarisations, share of the incident field. Only this can interfere with a wave that passes by.
    /// </summary>
    internal (double Reflectance, Complex InStep) Reflected(double cosIncidence)
    {
        double place = cosIncidence * Steps;
        int below = Math.Min((int)place, Steps - 1);
        double share = place - below;
        return (reflectance[below] + (share * (reflectance[below + 1] - reflectance[below])), inStep[below] + (share * (inStep[below + 1] - inStep[below])));
    }

    /// <summary>The caution to show with its figures at an angle; null where they are as good as its table's.</summary>
    internal string? CautionAt(double cosIncidence) => isLayered ? LayeredPanel.CautionAt(cosIncidence) : null;

    /// <summary>The same with more or less loss at every angle. The last one is kept: all variants of a house want the same.</summary>
    internal AngleTable Shifted(double moreDb)
    {
        AngleTable? last = Volatile.Read(ref shifted);
        if (last is null || last.shiftDb != moreDb)
        {
            Volatile.Write(ref shifted, last = new AngleTable(this, moreDb));
        }

        return last;
    }

    private static Layer[] LayersOf(Material material) => material switch
    {
        { Layers.Count: > 0 } => [.. material.Layers],
        { Dielectric: { } substance, ThicknessMetres: { } thickness, Form: LossForm.Sheet } =>
            [new Layer(substance, material.Name, thickness, 0)],
        _ => [],
    };

    private void Fill(double baseDb, SheetReflection reflects)
    {
        double passed = Decibels.ToPowerRatio(-baseDb);
        bool isMetal = reflects == SheetReflection.Metal;
        double reflected = Math.Min(1 - passed, isMetal ? MetalReflectance : PlainReflectance);
        for (int i = 0; i <= Steps; i++)
        {
            double cos = (double)i / Steps;
            Set(i, baseDb, reflected, Math.Sqrt(reflected) * (isMetal ? -cos * cos : FaceInStep(cos)));
        }
    }

    // The layers' own loss at each angle, shifted to match the table's loss.
    private void Fill(double aboveLayersDb, Ribs? ribs, LayeredPanel panel)
    {
        double squares = 0, weights = 0;
        for (int i = 0; i <= Steps; i++)
        {
            double cos = (double)i / Steps;
            PanelResponse response = panel.AtCosine(cos);
            squares += i * response.ToleranceSpreadDb * response.ToleranceSpreadDb;
            weights += i;
            double db = Math.Clamp(
                aboveLayersDb + response.TransmissionLossDb + RibsDb(ribs, cos), 0, LayeredSlab.GreatestLossDb);
            Set(i, db, response.Reflectance, response.InStep);
        }

        ToleranceSpreadDb = Math.Sqrt(squares / weights);
    }

    // The position of the studs is unknown: the mean over all positions.
    private static double RibsDb(Ribs? ribs, double cosIncidence)
    {
        if (ribs is null)
        {
            return 0;
        }

        double sin = Math.Sqrt(1 - (cosIncidence * cosIncidence));
        double share = RibShare.CoveredAcross(
            0, sin, cosIncidence, new RibRow(ribs.WidthMetres, ribs.DepthMetres, ribs.SpacingMetres), null);
        return CrossingLoss.Db(ObstacleKind.Joists, share, ribs.Material.LossDb);
    }

    // A perfect conductor reverses the electric field in TE and keeps the magnetic one in TM, which gives −cos²θ as the mean. Board
    // without stated layers has the phase of its face: that of a half space of plasterboard.
    private static Complex FaceInStep(double cos)
    {
        (SlabResponse te, SlabResponse tm) = LayeredSlab.SolveBoth([], 1, cos, Board);
        Complex mean = (te.Reflection + ((1 - (2 * cos * cos)) * tm.Reflection)) / 2;
        return mean / Math.Sqrt((te.Reflectance + tm.Reflectance) / 2);
    }

    private void Set(int i, double db, double reflected, Complex reflectedInStep)
    {

        lossDb[i] = db;
        amplitude[i] = Math.Sqrt(Decibels.ToPowerRatio(-db));
        reflectance[i] = Math.Min(1 - Decibels.ToPowerRatio(-db), reflected); // conserves energy

        // The coherent part never exceeds the whole reflected field.
        double most = Math.Sqrt(reflectance[i]), magnitude = reflectedInStep.Magnitude;
        inStep[i] = reflected > 0 ? reflectedInStep * Math.Min(magnitude > 0 ? most / magnitude : 0, most / Math.Sqrt(reflected)) : 0;
    }

    // The power of a diffuse field on a surface is distributed over cos θ with weight 2·cos θ.
    private (double Transmittance, double Reflectance) DiffuseMeans()
    {
        double passed = 0, reflected = 0, all = 0;
        for (int i = 0; i <= Steps; i++)
        {
            double weight = i;
            passed += weight * amplitude[i] * amplitude[i];
            reflected += weight * reflectance[i];
            all += weight;
        }

        return (passed / all, reflected / all);
    }

    private static double Read(double[] table, double cosIncidence)
    {
        double place = cosIncidence * Steps;
        int below = Math.Min((int)place, Steps - 1);
        return table[below] + ((place - below) * (table[below + 1] - table[below]));
    }
}

/// <summary>Where the loss of a crossing comes from.</summary>
public enum LossBasis
{
    /// <summary>The listed loss, at any angle.</summary>
    Listed,

    /// <summary>The listed loss at normal incidence; the change with the angle from the layers.</summary>
    HeadOnAndLayers,

    /// <summary>The listed loss as a mean over angles; the change with the angle from the layers.</summary>
    MeanAndLayers,

    /// <summary>The loss of the thing itself, where the listed one includes diffraction round it.</summary>
    Through,

    /// <summary>The mean amplitude through joists and between them, by the share of the path's width they cover.</summary>
    JoistShare,
}
