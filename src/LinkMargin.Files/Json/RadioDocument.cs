using LinkMargin.Engine.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Json;

/// <summary>One row of the radio table, as JSON.</summary>
/// <param name="Name">The word used in house files.</param>
/// <param name="What">What it is.</param>
/// <param name="TransmitDbm">Power into its antenna, dBm.</param>
/// <param name="AntennaGainDbi">Mean gain of its antenna, dBi.</param>
/// <param name="NeededDbm">The weakest level it receives, dBm.</param>
/// <param name="HandAndBodyDb">Allowance for the grip, dB.</param>
/// <param name="SpreadDb">One standard deviation between units and ways of holding, dB.</param>
/// <param name="Source">Where the figures are from.</param>
/// <param name="Also">Other words for it.</param>
public sealed record RadioDocument(
    string Name,
    string What,
    double TransmitDbm,
    double AntennaGainDbi,
    double NeededDbm,
    double HandAndBodyDb,
    double SpreadDb,
    string Source,
    IReadOnlyList<string> Also)
{
    internal static RadioDocument From(Radio radio, MaterialTables tables) => new(
        radio.Name,
        radio.Description,
        radio.TransmitPower.Dbm,
        radio.AntennaGainDb,
        radio.Sensitivity.Dbm,
        radio.HandAndBodyDb,
        radio.SpreadDb,
        radio.Source,
        tables.AlsoOf(radio.Name));
}
