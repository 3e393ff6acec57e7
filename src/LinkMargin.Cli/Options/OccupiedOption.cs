using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Cli.Options;

/// <summary>Seats with people on them who obstruct other links.</summary>
internal static class OccupiedOption
{
    private const string Name = "--occupied";
    private const string All = "all";
    private const string None = "none";

    /// <summary>Makes the option.</summary>
    public static Option<string[]?> Create() => new(Name)
    {
        Description = "Seats with people on them, who obstruct the links of the other seats: all, none (the default), or names of "
            + "seats.",
        HelpName = "all|none|SEAT...",
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = true,
    };

    /// <summary>The requested seats.</summary>
    /// <param name="typed">What was typed; null without the option.</param>
    /// <param name="house">The house.</param>
    /// <param name="invocation">Where warnings go about a person who cannot be put on a seat.</param>
    public static IReadOnlyList<Seat> Read(string[]? typed, House house, Invocation invocation)
    {
        if (typed is null or [None])
        {
            return [];
        }

        if (typed is [All])
        {
            return [.. house.Seats.Where(seat => seat.FacingDegrees is not null)];
        }

        Seat[] named = [.. typed.Distinct(StringComparer.Ordinal).Select(word => Find(word, house))];
        foreach (Seat seat in named.Where(seat => seat.FacingDegrees is null))
        {
            WordWrap.WriteMessage(
                $"'{seat.Name}' has no 'facing', so nobody is placed on it; add 'facing' to the seat in the house file", invocation.Error, invocation.Width);
        }

        return [.. named.Where(seat => seat.FacingDegrees is not null)];
    }

    private static Seat Find(string word, House house) => house.Seats.FirstOrDefault(seat => seat.Name == NameText.Normal(word))
        ?? throw new CannotBeDoneException(word is All or None
            ? $"{Name} takes either '{word}' alone or names of seats"
            : $"there is no seat {Quote.Of(word)} for {Name}; {NearestWord.Advice(word, [.. house.Seats.Select(seat => seat.Name), All, None])}");
}
