using System.CommandLine;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Files.Json;
using LinkMargin.Files.Resources;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Cli.Commands;

/// <summary>A house file to start from, with the schema beside it.</summary>
internal static class NewCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        Argument<string> file = new("FILE") { Description = "the file to write, such as house.yaml" };
        var command = new Command("new", $"A commented house file to start from, and {HouseSchema.FileName} beside it for editors that complete and check." + ExitCodes.Of())
        {
            file,
        };
        command.SetAction(parse =>
        {
            string typed = parse.GetValue(file)!;
            bool force = parse.GetValue(common.Force);
            string schema = Path.Combine(Path.GetDirectoryName(typed) ?? "", HouseSchema.FileName);
            invocation.Files.Write(typed, StarterHouse.Text, force);
            invocation.Files.Write(schema, HouseSchema.Text, force);
            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(new NewDocument(typed, schema)));
            }
            else
            {
                WordWrap.Write($"{typed}: a small example house; change it to match yours. With {schema} beside it, a text editor completes words and underlines errors.", invocation.Output, invocation.Width);
                WordWrap.Write(
                    $"Next: change it, then run 'linkmargin check {typed}', which reports errors and warnings and draws the plan.", invocation.Output, invocation.Width);
            }

            return ExitCodes.Done;
        });
        return command;
    }
}
