using LinkMargin.Cli.Invoking;

namespace LinkMargin.Cli.Tests.Processes;

/// <summary>Every command, with its output or its talk going nowhere: it ends with 2, and never by an abort.</summary>
public sealed class StandardStreamsTests : IDisposable
{
    // A pipe whose reader is gone before anything is written to it.
    private const string NobodyReads = "mkfifo gone && exec 3<>gone 4>gone 3<&- && ";

    private readonly ScratchFolder folder = new();

    public StandardStreamsTests()
    {
        folder.Put("house.yaml", SampleFile.Modest + "displays: [{name: screen, level: den, at: [3.5, 0.2, 1]}]\n");
        folder.Put("readings.csv", "transmitter,receiver,received,device\nden rack,sofa,-48,phone\nloft shelf,desk,-50,phone\n");

        // Tables of which five files are missing: every command has something to say of that.
        Directory.CreateDirectory(folder.PathOf("tables"));
        folder.Put("tables/margins.yaml", Files.Tables.MaterialTablesFile.BuiltInText("margins.yaml"));
    }

    public void Dispose() => folder.Dispose();

    /// <summary>One line for each command that there is, but for the page, which serves until it is stopped; a test holds it to that.</summary>
    public static TheoryData<string> Commands { get; } =
    [
        "demo --model direct --out demo",
        "new new.yaml",
        "check house.yaml",
        "explain house.yaml --spot 'den rack' --seat sofa --model direct",
        "compare house.yaml --model direct",
        "fit house.yaml readings.csv --model direct",
        "place house.yaml --model direct --grid 1",
        "improve house.yaml --spot 'den rack' --model direct",
        "map house.yaml --model direct --cell 0.5",
        "runs house.yaml",
        "report house.yaml --model direct",
        "completion bash",
        "materials brick",
        "guide budget",
    ];

    /// <summary>
    /// A short text, a long one and a computed table. What a command writes to is checked and made before its words are read, so these stand for all as
    /// processes, and every command is tried with writers that fail.
    /// </summary>
    public static TheoryData<string> CommandsOfEachKind { get; } = ["materials brick", "guide budget", "compare house.yaml --model direct"];

    [Fact]
    public void Every_command_is_tried() => Assert.Equal(
        CommandLineProgram.Create(new Invocation(TextWriter.Null, TextWriter.Null, "")).Subcommands.Select(command => command.Name).Where(name => name != "page").Order(StringComparer.Ordinal),
        ((IEnumerable<object[]>)Commands).Select(row => ((string)row[0]).Split(' ')[0]).Order(StringComparer.Ordinal));

    [UnixTheory]
    [MemberData(nameof(CommandsOfEachKind))]
    public void Output_that_is_closed_is_reported_of_before_anything_is_done(string command)
    {
        IReadOnlyList<string> before = folder.Files;
        CommandRun run = Run($"exec \"$P\" {command} >&-");

        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith("linkmargin: standard output is closed; leave it open", run.ErrorUnwrapped, StringComparison.Ordinal);
        Assert.Single(run.Error.Split("linkmargin: "), part => part.Length > 0);
        Assert.Equal(before, folder.Files);
    }

    [UnixTheory]
    [MemberData(nameof(CommandsOfEachKind))]
    public void Error_that_is_closed_ends_it_before_anything_is_done(string command)
    {
        IReadOnlyList<string> before = folder.Files;
        foreach (string closed in (string[])["2>&-", ">&- 2>&-"])
        {
            CommandRun run = Run($"exec \"$P\" {command} {closed}");

            Assert.Equal(2, run.ExitCode);
            Assert.Empty(run.Output);
            Assert.Equal(before, folder.Files);
        }
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Output_that_cannot_be_written_is_reported_of(string command)
    {
        StringWriter error = new() { NewLine = "\n" };
        Assert.Equal(2, CommandLineProgram.Run(CommandRun.WordsOf(command), new Invocation(Unwritable(), error, folder.Path)));
        Assert.Matches("(^|\n)linkmargin: the results cannot be written: .+\n$", CommandRun.OneLineEach(error.ToString()));
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Messages_that_cannot_be_written_end_it(string command)
    {
        string[] talking = CommandRun.WordsOf(Talking(command));
        Assert.Equal(2, CommandLineProgram.Run(talking, new Invocation(new StringWriter(), UnwritableError(), folder.Path)));
        Assert.Equal(2, CommandLineProgram.Run(talking, new Invocation(Unwritable(), UnwritableError(), folder.Path)));
    }

    [UnixTheory]
    [MemberData(nameof(CommandsOfEachKind))]
    public void Output_that_is_full_or_that_nobody_reads_is_output_that_cannot_be_written(string command)
    {
        foreach (string script in (string[])[$"exec \"$P\" {command} >/dev/full", $"{NobodyReads}exec \"$P\" {command} >&4 4>&-"])
        {
            if (script.Contains("/dev/full", StringComparison.Ordinal) && !File.Exists("/dev/full"))
            {
                continue; // only some systems have it
            }

            CommandRun run = Run(script);

            Assert.Equal(2, run.ExitCode);
            Assert.Matches("(^|\n)linkmargin: the results cannot be written: .+\n$", run.Error);
        }
    }

    [UnixTheory]
    [MemberData(nameof(CommandsOfEachKind))]
    public void Error_that_is_full_or_that_nobody_reads_ends_it(string command)
    {
        string talking = Talking(command);
        foreach (string script in (string[])[$"exec \"$P\" {talking} 2>/dev/full", $"{NobodyReads}exec \"$P\" {talking} 2>&4 4>&-"])
        {
            if (script.Contains("/dev/full", StringComparison.Ordinal) && !File.Exists("/dev/full"))
            {
                continue;
            }

            Assert.Equal(2, Run(script).ExitCode);
        }

        if (File.Exists("/dev/full"))
        {
            Assert.Equal(2, Run($"exec \"$P\" {talking} >/dev/full 2>/dev/full").ExitCode);
        }
    }

    [UnixTheory]
    [InlineData("--help")]
    [InlineData("--version")]
    [InlineData("compare --help")]
    public void Help_and_version_are_no_different(string words)
    {
        Assert.Equal(2, Run($"exec \"$P\" {words} >&-").ExitCode);
        Assert.Equal(2, Run($"{NobodyReads}exec \"$P\" {words} >&4 4>&-").ExitCode);
    }

    [UnixTheory]
    [InlineData("materials brick >out.txt 2>&1")]
    [InlineData("materials brick | cat >out.txt")]
    [InlineData("materials brick <&- | cat >out.txt")]
    public void Where_both_are_open_they_are_written_to(string words)
    {
        Assert.Equal(0, Run($"\"$P\" {words}").ExitCode);
        Assert.Equal(CommandRun.Of("materials", "brick").Output, File.ReadAllText(folder.PathOf("out.txt")));
    }

    [UnixTheory]
    [InlineData("materials brick >both.txt 2>&1; \"$P\" materials nonsense >>both.txt 2>&1")]
    public void Two_that_go_to_one_file_stand_in_it_one_behind_the_other(string words)
    {
        Run($"\"$P\" {words}");
        string text = File.ReadAllText(folder.PathOf("both.txt"));
        Assert.StartsWith(CommandRun.Of("materials", "brick").Output + "linkmargin: the tables have no row 'nonsense'", text, StringComparison.Ordinal);
    }

    // The same command with something to say.
    private static string Talking(string command)
    {
        bool readsNoTables = command.Split(' ')[0] is "new" or "guide" or "completion";
        return readsNoTables ? $"{command} --nonsense" : $"{command} --materials tables";
    }

    // Buffered as the program's own output is; what is written to it fails when it is flushed.
    private static StreamWriter Unwritable() => new(new UnwritableStream());

    private static StreamWriter UnwritableError() => new(new UnwritableStream()) { AutoFlush = true };

    private CommandRun Run(string script)
    {
        File.Delete(folder.PathOf("gone"));
        CommandRun run = BuiltProgram.Run(folder.Path, script);
        File.Delete(folder.PathOf("gone"));
        return run;
    }

    private sealed class UnwritableStream : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("Nothing can be written here");

        public override void Flush()
        {
            // Nothing is buffered.
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();
    }
}
