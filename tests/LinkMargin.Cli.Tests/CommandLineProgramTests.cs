using System.Text;
using LinkMargin.Cli.Invoking;

namespace LinkMargin.Cli.Tests;

public sealed class CommandLineProgramTests
{
    [Fact]
    public void A_fault_of_the_program_itself_becomes_one_sentence_that_asks_for_a_report()
    {
        CommandRun run = RunInto(new FailingWriter(new InvalidOperationException("two\nlines")));

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("linkmargin: unexpected error: InvalidOperationException: two lines; this is a bug in the program, please report it\n", CommandRun.OneLineEach(run.Error));
    }

    [Fact]
    public void Results_that_cannot_be_written_are_said_to_be_so()
    {
        CommandRun run = RunInto(new FailingWriter(new IOException("No space left on device")));

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("linkmargin: the results cannot be written: No space left on device\n", run.Error);
    }

    [Fact]
    public void Too_little_memory_is_reported_with_what_to_do()
    {
        CommandRun run = RunInto(new FailingWriter(new InsufficientMemoryException()));

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("choose a larger --cell", run.Error, StringComparison.Ordinal);
    }

    // What describes all commands needs all.
    [Fact]
    public void A_command_that_is_typed_is_the_only_one_made_unless_it_describes_the_others()
    {
        var nowhere = new Invocation(TextWriter.Null, TextWriter.Null, "");
        string[] all = NamesOf(null);
        Assert.All(all, name => Assert.Equal(name is "guide" or "completion" ? all : [name], NamesOf(name)));
        Assert.Equal(all, NamesOf("--help"));
        Assert.Equal(all, NamesOf("expalin"));

        string[] NamesOf(string? firstWord) => [.. CommandLineProgram.Create(nowhere, firstWord).Subcommands.Select(command => command.Name)];
    }

    private static CommandRun RunInto(TextWriter output)
    {
        var error = new StringWriter { NewLine = "\n" };
        int exitCode = CommandLineProgram.Run(["materials", "brick"], new Invocation(output, error, ""));
        return new CommandRun(exitCode, "", error.ToString());
    }

    private sealed class FailingWriter(Exception fault) : TextWriter
    {
        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(char value) => throw fault;
    }
}
