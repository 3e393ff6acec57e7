using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses;

/// <summary>Reads radios, named from the table or described in the file.</summary>
internal sealed class RadioReader(Source source, IReadOnlyDictionary<string, Radio> table)
{
    /// <summary>Reads both; null, with an error recorded, if one could not be read.</summary>
    public (Radio? Console, Radio? Controller) Read(MappingReader file)
    {
        MappingReader? radios = file.OptionalGroup("radios", "'radios'", HouseKeys.Radios);
        return (
            One(file, radios, "console", HouseLimits.TypicalConsole),
            One(file, radios, "controller", HouseLimits.TypicalController));
    }

    private Radio? One(MappingReader file, MappingReader? radios, string key, string typical)
    {
        if (radios is null || !radios.Has(key))
        {
            if (table.TryGetValue(typical, out Radio? found))
            {
                return found;
            }

            source.Error((radios ?? file).Mark,
                $"the radio table has no '{typical}', so the file must say which radio the {key} has; "
                    + $"add 'radios: {{{key}: ...}}'");
            return null;
        }

        return Of(radios, key, key);
    }

    /// <summary>Reads the radio of a spot's console; null where it has none of its own, or none that could be read.</summary>
    public Radio? OfSpot(MappingReader spot) => spot.Has("radio") ? Of(spot, "radio", "console") : null;

    private Radio? Of(MappingReader group, string key, string end) => group.Optional(key) switch
    {
        null => null,
        MappingNode written => Written(new MappingReader(source, written, "a radio", HouseKeys.Radio), end),
        { } named => ValueReader.TryChoose(source, named, key, table, "in the radio table", "'linkmargin materials'", out Radio? radio)
            ? radio
            : null,
    };

    private static Radio? Written(MappingReader group, string key)
    {
        string name = group.OptionalName("name") ?? key;
        double? transmit = group.RequiredNumber("transmit", Quantity.LevelDbm, TableLimits.Transmit);
        double? gain = group.RequiredNumber("gain", Quantity.Gain, TableLimits.Gain);
        bool includesMismatch = group.OptionalFlag(RadioTableReader.MismatchKey) ?? false;
        double? sensitivity = group.RequiredNumber("sensitivity", Quantity.LevelDbm, TableLimits.Sensitivity);

        // A console stands on a shelf; a controller is held, so its loss by the hand must be given.
        double? hand = key == "controller" || group.Has("hand")
            ? group.RequiredNumber("hand", Quantity.Decibels, TableLimits.Hand)
            : 0;
        double spread = group.OptionalNumber("spread", Quantity.Decibels, TableLimits.Spread) ?? HouseLimits.RadioSpreadDb;
        return transmit is { } power && gain is { } gainDb && sensitivity is { } weakest && hand is { } handDb
            ? new Radio(name, PowerLevel.FromDbm(power), gainDb, PowerLevel.FromDbm(weakest), handDb, spread, "written in the house file")
            {
                GainIncludesMismatch = includesMismatch,
            }
            : null;
    }
}
