using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Tables;

/// <summary>
/// Allowed ranges for the figures of a table, and of a radio in a house file. The checks and the messages both use them.
/// </summary>
internal static class TableLimits
{
    /// <summary>Layers of one construction, including those of the rows it is built of.</summary>
    public const int MostLayers = 40;

    /// <summary>Greatest nesting of rows that are built of other rows.</summary>
    public const int MostRowsDeep = 12;

    /// <summary>Rows of one table.</summary>
    public const int MostRows = 1000;

    /// <summary>Most synonyms of one row.</summary>
    public const int MostAlso = 20;

    /// <summary>Loss of a material; with paths around it, nothing in a house has a higher effective loss.</summary>
    public static QuantityRange Loss { get; } = new(0, 80, "dB");

    /// <summary>One standard deviation, of a material or a radio.</summary>
    public static QuantityRange Spread { get; } = new(0, 30, "dB");

    /// <summary>Standard deviation of measurements, good or bad, and of the measuring devices; never 0.</summary>
    public static QuantityRange MeasurementSpread { get; } = new(0.1, 60, "dB");

    /// <summary>A share; never all of it.</summary>
    public static QuantityRange Share { get; } = new(0, 0.9, "");

    /// <summary>Thickness of a material or layer, width and depth of a member.</summary>
    public static QuantityRange Thickness { get; } = new(0.0001, 2, "m");

    /// <summary>Half the range of a thickness.</summary>
    public static QuantityRange Tolerance { get; } = new(0, 1, "m");

    /// <summary>Distance between the centres of studs or joists.</summary>
    public static QuantityRange Spacing { get; } = new(0.05, 3, "m");

    /// <summary>Relative permittivity at 1 GHz.</summary>
    public static QuantityRange Permittivity { get; } = new(1, 100, "");

    /// <summary>Conductivity at 1 GHz, S/m; metals reach 10⁷.</summary>
    public static QuantityRange Conductivity { get; } = new(0, 1e8, "S/m");

    /// <summary>Exponent of the frequency.</summary>
    public static QuantityRange Exponent { get; } = new(-3, 3, "");

    /// <summary>Power into an antenna: from the weakest beacon to far above any radio in a house.</summary>
    public static QuantityRange Transmit { get; } = new(-40, 36, "dBm");

    /// <summary>Mean gain of an antenna.</summary>
    public static QuantityRange Gain { get; } = new(-30, 30, "dBi");

    /// <summary>Weakest level that a receiver decodes.</summary>
    public static QuantityRange Sensitivity { get; } = new(-140, -20, "dBm");

    /// <summary>Allowance for the grip and the body.</summary>
    public static QuantityRange Hand { get; } = new(0, 40, "dB");

    /// <summary>A margin that has a meaning in the table.</summary>
    public static QuantityRange Margin { get; } = new(0, 80, "dB");

    /// <summary>Outer diameter of a cable.</summary>
    public static QuantityRange CableDiameter { get; } = new(0.0005, 0.1, "m");

    /// <summary>Smallest bend radius of a cable.</summary>
    public static QuantityRange CableBend { get; } = new(0.001, 2, "m");

    /// <summary>A side of a cable's plug.</summary>
    public static QuantityRange CableEnd { get; } = new(0.001, 0.3, "m");

    /// <summary>A length in which a cable is sold, or the greatest length it works over.</summary>
    public static QuantityRange CableLength { get; } = new(0.1, 1000, "m");

    /// <summary>Greatest force for pulling a cable.</summary>
    public static QuantityRange CablePull { get; } = new(1, 5000, "N");

    /// <summary>Raw bit rate of a video link.</summary>
    public static QuantityRange LinkRate { get; } = new(0.1, 1000, "Gbit/s");

    /// <summary>The lowest probability in a band.</summary>
    public static QuantityRange Probability { get; } = new(0, 1, "");
}
