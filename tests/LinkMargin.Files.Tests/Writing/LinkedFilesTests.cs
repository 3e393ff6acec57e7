using System.Diagnostics;
using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Tests.Writing;

/// <summary>What a name leads to is what counts, not how it is spelled.</summary>
public sealed class LinkedFilesTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("linkmargin-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [UnixFact]
    public void A_link_stays_and_the_file_it_leads_to_is_replaced_in_its_own_folder()
    {
        Directory.CreateDirectory(In("far"));
        File.WriteAllText(In("far/a.csv"), "old");
        File.CreateSymbolicLink(In("link"), "far/a.csv");
        File.CreateSymbolicLink(In("link to link"), "link");

        WholeFile.Write(In("link to link"), "new", force: true);

        Assert.Equal("link", new FileInfo(In("link to link")).LinkTarget);
        Assert.Equal("far/a.csv", new FileInfo(In("link")).LinkTarget);
        Assert.Null(new FileInfo(In("far/a.csv")).LinkTarget);
        Assert.Equal("new", File.ReadAllText(In("far/a.csv")));
        Assert.Equal(["a.csv"], Names("far"));
        Assert.Equal(["far", "link", "link to link"], Names(""));
    }

    [UnixFact]
    public void A_strangers_file_behind_a_link_is_kept()
    {
        File.WriteAllText(In("theirs"), "my notes");
        File.CreateSymbolicLink(In("link"), "theirs");
        Assert.Contains("this file exists", Fault(In("link"), force: false), StringComparison.Ordinal);
        Assert.Equal("my notes", File.ReadAllText(In("theirs")));
    }

    [UnixFact]
    public void A_link_to_no_file_makes_that_file_and_stays()
    {
        Directory.CreateDirectory(In("far"));
        File.CreateSymbolicLink(In("link"), "far/a.csv");
        WholeFile.Write(In("link"), "new", force: false);
        Assert.Equal("far/a.csv", new FileInfo(In("link")).LinkTarget);
        Assert.Equal("new", File.ReadAllText(In("far/a.csv")));
    }

    [UnixFact]
    public void A_link_into_no_folder_says_where_it_leads()
    {
        File.CreateSymbolicLink(In("link"), "none/a.csv");
        Assert.EndsWith("none/a.csv, whose folder does not exist; create the folder first, or choose another place", Fault(In("link"), force: true), StringComparison.Ordinal);
        Assert.Equal(["link"], Names(""));
    }

    [UnixFact]
    public void Links_in_a_circle_are_said_to_be_so_and_stay()
    {
        File.CreateSymbolicLink(In("one"), "other");
        File.CreateSymbolicLink(In("other"), "one");
        Assert.EndsWith("this cannot be written: its symbolic links form a loop", Fault(In("one"), force: true), StringComparison.Ordinal);
        Assert.Equal(["one", "other"], Names(""));
    }

    [UnixFact]
    public void A_link_that_leads_upwards_is_followed_from_the_folder_that_is_meant()
    {
        // 'here' is 'a/b', so the link in it leads to 'a/target.csv' and not to 'target.csv'.
        Directory.CreateDirectory(In("a/b"));
        File.WriteAllText(In("a/target.csv"), "old");
        File.WriteAllText(In("target.csv"), "another");
        File.CreateSymbolicLink(In("here"), "a/b");
        File.CreateSymbolicLink(In("a/b/up"), "../target.csv");

        WholeFile.Write(In("here/up"), "new", force: true);

        Assert.Equal("new", File.ReadAllText(In("a/target.csv")));
        Assert.Equal("another", File.ReadAllText(In("target.csv")));
        Assert.Equal("../target.csv", new FileInfo(In("a/b/up")).LinkTarget);
    }

    [UnixFact]
    public void A_link_to_a_folder_is_a_folder()
    {
        Directory.CreateDirectory(In("a"));
        File.CreateSymbolicLink(In("link"), "a");
        Assert.EndsWith("this is a folder; name a file in it", Fault(In("link"), force: true), StringComparison.Ordinal);
    }

    [UnixFact]
    public void A_file_in_the_folder_of_devices_is_a_file_and_not_written_over()
    {
        const string Memory = "/dev/shm";
        if (!Directory.Exists(Memory))
        {
            return;
        }

        string path = Path.Combine(Memory, $"{Path.GetFileName(folder)}.csv");
        try
        {
            File.WriteAllText(path, "my notes, longer than what is written");
            Assert.Contains("this file exists", Fault(path, force: false), StringComparison.Ordinal);
            Assert.Equal("my notes, longer than what is written", File.ReadAllText(path));
            WholeFile.Write(path, "new", force: true);
            Assert.Equal("new", File.ReadAllText(path));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [UnixFact]
    public void A_named_pipe_gets_what_is_written_and_stays_a_pipe()
    {
        string pipe = MakePipe("pipe");
        Task<string> read = Task.Run(() => File.ReadAllText(pipe));
        WholeFile.Write(pipe, "through", force: false);
        Assert.True(read.Wait(TimeSpan.FromMinutes(1)));
        Assert.Equal("through", read.Result);
        Assert.Equal(FileKind.Stream, SystemFile.KindOf(pipe));
    }

    [UnixFact]
    public void The_system_is_asked_what_a_name_leads_to()
    {
        File.WriteAllText(In("file"), "");
        File.CreateSymbolicLink(In("link"), "file");
        File.CreateSymbolicLink(In("dangling"), "none");
        File.CreateSymbolicLink(In("null"), "/dev/null");
        Assert.Equal(FileKind.Regular, SystemFile.KindOf(In("file")));
        Assert.Equal(FileKind.Regular, SystemFile.KindOf(In("link")));
        Assert.Equal(FileKind.Folder, SystemFile.KindOf(folder));
        Assert.Equal(FileKind.None, SystemFile.KindOf(In("none")));
        Assert.Equal(FileKind.None, SystemFile.KindOf(In("dangling")));
        Assert.Equal(FileKind.Stream, SystemFile.KindOf("/dev/null"));
        Assert.Equal(FileKind.Stream, SystemFile.KindOf(In("null")));
        Assert.Equal(FileKind.Stream, SystemFile.KindOf(MakePipe("pipe"))); // and does not wait for a writer
    }

    [UnixFact]
    public void Names_of_one_file_are_reported_from_those_of_another()
    {
        File.WriteAllText(In("file"), "same");
        File.WriteAllText(In("other"), "same");
        File.CreateSymbolicLink(In("link"), "file");
        Link(In("file"), In("hard"));
        foreach (string name in (string[])["file", "link", "hard", "./file", "none/../file"])
        {
            Assert.True(WholeFile.AreSame(In("file"), In(name)), name);
            Assert.False(WholeFile.AreSame(In("other"), In(name)), name);
        }

        Assert.False(WholeFile.AreSame(In("none"), In("none")));
        Assert.False(WholeFile.AreSame("/dev/null", "/dev/null")); // written to any number of times
    }

    [Fact]
    public void Two_names_are_of_two_files_on_every_system()
    {
        File.WriteAllText(In("one"), "same");
        File.WriteAllText(In("other"), "same");
        Assert.True(WholeFile.AreSame(In("one"), In("one")));
        Assert.False(WholeFile.AreSame(In("one"), In("other")));
    }

    [Fact]
    public void What_is_half_written_when_the_program_must_end_is_removed_and_nothing_is_begun_any_more()
    {
        UnfinishedFiles unfinished = new();
        unfinished.Create(In("finished.part")).Dispose();
        unfinished.Finish(In("finished.part"), In("finished"), overwrite: false);
        using FileStream half = unfinished.Create(In("half.part"));
        if (OperatingSystem.IsWindows())
        {
            half.Dispose(); // there an open file cannot be removed
        }

        unfinished.RemoveAll();

        Assert.Equal(["finished"], Names(""));
        Assert.Throws<OperationCanceledException>(() => unfinished.Create(In("late.part")));
        Assert.Equal(["finished"], Names(""));
    }

    private static string Fault(string path, bool force) =>
        Assert.Throws<FileProblemException>(() => WholeFile.Write(path, "new", force)).Message;

    private static void Link(string path, string other) => Run("ln", path, other);

    private string MakePipe(string name)
    {
        Run("mkfifo", In(name));
        return In(name);
    }

    private static void Run(string program, params string[] words)
    {
        using Process process = Process.Start(program, words);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }

    private string[] Names(string below) =>
        [.. Directory.GetFileSystemEntries(In(below)).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    private string In(string name) => Path.Combine(folder, name);
}
