using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Files.Bundles;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Options;

/// <summary>The bundle that was given in place of a house file.</summary>
internal static class OpenedBundle
{
    /// <summary>The name of the argument of a house file.</summary>
    public const string HouseArgumentName = "HOUSE";

    /// <summary>Opens it; null if the file is not an archive.</summary>
    /// <param name="invocation">Where relative names start from.</param>
    /// <param name="typed">The file as typed.</param>
    public static Bundle? Of(Invocation invocation, string typed)
    {
        string path = invocation.Files.ToRead(typed);
        try
        {
            return Bundle.IsAt(path) ? Bundle.Read(path) : null;
        }
        catch (BundleFaultException fault)
        {
            throw new CannotBeDoneException(fault.Message);
        }
    }

    /// <summary>The same for the command's own argument; null if it has none.</summary>
    public static (string Typed, Bundle Bundle)? Of(Invocation invocation, ParseResult parse)
    {
        Argument<string>? house = parse.CommandResult.Command.Arguments.OfType<Argument<string>>().FirstOrDefault(argument => argument.Name == HouseArgumentName);
        return house is not null && parse.GetValue(house) is { } typed && Of(invocation, typed) is { } bundle ? (typed, bundle) : null;
    }
}
