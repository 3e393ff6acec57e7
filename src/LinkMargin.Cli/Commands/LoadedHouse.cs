using LinkMargin.Cli.Output;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;

namespace LinkMargin.Cli.Commands;

/// <summary>A house that can be computed, with the tables it was read with.</summary>
/// <param name="House">The house.</param>
/// <param name="Unit">The unit of its file's bare lengths.</param>
/// <param name="Tables">The tables it was read with.</param>
internal sealed record LoadedHouse(House House, LengthUnit Unit, MaterialTables Tables)
{
    /// <summary>How its file writes lengths.</summary>
    public LengthWords Lengths { get; } = new(Unit);

    /// <summary>The same for pictures.</summary>
    public Plots.LengthUnit PlotUnit => Lengths.InFeet ? Plots.LengthUnit.Feet : Plots.LengthUnit.Metres;

    /// <summary>Reads a house file; what is wrong or odd in it goes to the talk, and a mistake ends the command.</summary>
    /// <param name="invocation">Where the talk goes.</param>
    /// <param name="tables">The tables it may name.</param>
    /// <param name="typed">The file as it was typed.</param>
    public static LoadedHouse Read(Invocation invocation, MaterialTables tables, string typed)
    {
        HouseReading reading = ReadFile(invocation, tables, typed);
        ProblemLines.Write(reading.Problems, invocation.Error);
        return reading.House is null
            ? throw new CannotBeDoneException(ProblemLines.MendFirst(typed, reading.Problems))
            : Of(reading, tables);
    }

    /// <summary>Reads a house file, whatever comes of it.</summary>
    public static HouseReading ReadFile(Invocation invocation, MaterialTables tables, string typed) =>
        HouseFile.Read(invocation.PathOf(typed), tables);

    /// <summary>A reading that gave a house.</summary>
    public static LoadedHouse Of(HouseReading reading, MaterialTables tables) => new(
        reading.House ?? throw new ArgumentException("This reading gave no house.", nameof(reading)), reading.Unit, tables);

    /// <summary>Refuses a house that has nothing to compare.</summary>
    public void NeedSpotsAndSeats()
    {
        if (House.Spots.Count == 0 || House.Seats.Count == 0)
        {
            throw NamedThing.NoneOf(House.Spots.Count == 0 ? "spot" : "seat");
        }
    }
}
