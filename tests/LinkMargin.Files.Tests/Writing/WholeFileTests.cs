using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Tests.Writing;

public sealed class WholeFileTests : IDisposable
{
    private const int NoSpace = 28;

    private readonly string folder = Directory.CreateTempSubdirectory("linkmargin-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_new_file_is_written_whole_and_nothing_else_remains()
    {
        string path = In("a.csv");
        WholeFile.Write(path, "x, ü\n", force: false);
        Assert.Equal("x, ü\n"u8.ToArray(), File.ReadAllBytes(path));
        Assert.Single(Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void A_file_that_could_not_be_written_is_refused_before_the_work_and_nothing_is_left_behind()
    {
        string ours = In("ours.csv"), theirs = In("theirs.csv"), nowhere = Path.Combine(folder, "missing", "a.csv");
        WholeFile.Write(ours, Sealed("1"), force: false);
        File.WriteAllText(theirs, "my notes");
        foreach (string path in (string[])[theirs, nowhere, folder])
        {
            FileProblemException before = Assert.Throws<FileProblemException>(() => WholeFile.NeedWritable(path, force: false));
            FileProblemException after = Assert.Throws<FileProblemException>(() => WholeFile.Write(path, Sealed("2"), force: false));
            Assert.Equal(after.Message, before.Message);
        }

        foreach ((string path, bool force) in new[] { (ours, false), (theirs, true), (In("new.csv"), false) })
        {
            WholeFile.NeedWritable(path, force);
        }

        Assert.Equal([ours, theirs], Directory.GetFileSystemEntries(folder).Order());
        Assert.Equal("my notes", File.ReadAllText(theirs));
    }

    [Fact]
    public void Its_own_output_is_replaced_and_nobody_elses()
    {
        string ours = In("ours.csv"), theirs = In("theirs.csv");
        WholeFile.Write(ours, Sealed("1"), force: false);
        WholeFile.Write(ours, Sealed("2"), force: false);
        Assert.Equal(Sealed("2"), File.ReadAllText(ours));

        File.WriteAllText(theirs, "my notes");
        FileProblemException problem = Assert.Throws<FileProblemException>(() => WholeFile.Write(theirs, "new", force: false));
        Assert.StartsWith(theirs + ": this file exists", problem.Message, StringComparison.Ordinal);
        Assert.Equal("my notes", File.ReadAllText(theirs));
        WholeFile.Write(theirs, "new", force: true);
        Assert.Equal("new", File.ReadAllText(theirs));
    }

    [Fact]
    public void Its_own_output_is_kept_once_somebody_changed_it_and_so_is_an_old_one_that_cannot_tell()
    {
        string path = In("fitted.yaml");
        foreach (string changed in (string[])[Sealed("1") + "# mine now\n", Sealed("1").Replace('1', '3'), GeneratorMark.CommentLine + "\n1\n"])
        {
            File.WriteAllText(path, changed);
            FileProblemException problem = Assert.Throws<FileProblemException>(() => WholeFile.Write(path, Sealed("2"), force: false));
            Assert.StartsWith(path + ": this file was changed after LinkMargin wrote it", problem.Message, StringComparison.Ordinal);
            Assert.Contains("--force", problem.Message, StringComparison.Ordinal);
            Assert.Equal(changed, File.ReadAllText(path));
        }

        WholeFile.Write(path, Sealed("2"), force: true);
        Assert.Equal(Sealed("2"), File.ReadAllText(path));
    }

    [Fact]
    public void A_house_file_is_kept_once_somebody_changed_it()
    {
        string path = In("house.yaml");
        WholeFile.Write(path, Files.Resources.StarterHouse.Text, force: false);
        WholeFile.Write(path, Files.Resources.StarterHouse.Text, force: false);
        File.AppendAllText(path, "# mine now\n");
        Assert.Throws<FileProblemException>(() => WholeFile.Write(path, Files.Resources.StarterHouse.Text, force: false));
    }

    [Fact]
    public void A_schema_of_another_version_is_replaced()
    {
        string path = In("house.schema.json");
        File.WriteAllText(path, Files.Resources.HouseSchema.Text + " ");
        WholeFile.Write(path, Files.Resources.HouseSchema.Text, force: false);
        Assert.Equal(Files.Resources.HouseSchema.Text, File.ReadAllText(path));
    }

    [Fact]
    public void A_folder_in_the_way_is_named_and_kept()
    {
        Directory.CreateDirectory(In("maps"));
        Assert.EndsWith("this is a folder; name a file in it", Fault(In("maps")), StringComparison.Ordinal);
        Assert.EndsWith("its folder does not exist; create it first, or choose another place", Fault(Path.Combine(In("none"), "a.csv")), StringComparison.Ordinal);
        Assert.Single(Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void A_folder_is_made_with_those_above_it_and_a_file_in_the_way_is_named()
    {
        WholeFile.MakeFolder(Path.Combine(In("a"), "b"));
        Assert.True(Directory.Exists(Path.Combine(In("a"), "b")));
        File.WriteAllText(In("c"), "");
        Assert.EndsWith("this is a file, and a folder is needed; choose another name", Assert.Throws<FileProblemException>(() => WholeFile.MakeFolder(In("c"))).Message, StringComparison.Ordinal);
        Assert.Throws<FileProblemException>(() => WholeFile.MakeFolder(Path.Combine(In("c"), "d")));
    }

    [Fact]
    public void A_disk_that_fills_up_leaves_the_old_file_and_nothing_half_written()
    {
        string path = In("a.csv");
        File.WriteAllText(path, "old");
        FileProblemException problem = Assert.Throws<FileProblemException>(() => WholeFile.Guarded(path, () => WholeFile.Replace(Path.GetFullPath(path), stream =>
        {
            stream.Write(new byte[100_000]);
            throw new IOException("No space left on device", OperatingSystem.IsWindows() ? 112 : NoSpace);
        }, overwrite: true)));
        Assert.Equal(path + ": the disk is full; free some space or choose another place", problem.Message);
        Assert.Equal([path], Directory.GetFileSystemEntries(folder));
        Assert.Equal("old", File.ReadAllText(path));
    }

    [Fact]
    public void A_device_that_is_always_full_says_so_and_stays_a_device()
    {
        const string Full = "/dev/full";
        if (File.Exists(Full))
        {
            Assert.Equal(Full + ": the disk is full; free some space or choose another place", Fault(Full));
            Assert.Equal(Full + ": the disk is full; free some space or choose another place", Fault(Full));
            WholeFile.Write("/dev/null", "gone", force: true);
            Assert.Empty(File.ReadAllBytes("/dev/null"));
        }
    }

    [Fact]
    public void A_folder_without_permission_is_said_to_be_so()
    {
        // The superuser may write everywhere, so there the question cannot be asked of the file system.
        if (OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess)
        {
            return;
        }

        Directory.CreateDirectory(In("locked"), UnixFileMode.UserRead | UnixFileMode.UserExecute);
        Assert.EndsWith("you have no permission to write here; choose another place", Fault(Path.Combine(In("locked"), "a.csv")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("a\0b")]
    public void A_name_that_cannot_be_a_file_gets_a_sentence(string name) =>
        Assert.Contains("this cannot be written: ", Fault(name), StringComparison.Ordinal);

    [UnixFact]
    public void Who_may_read_a_file_stays_when_it_is_replaced()
    {
        string path = In("a.csv");
        WholeFile.Write(path, Sealed("1"), force: false);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
            WholeFile.Write(path, Sealed("2"), force: false);
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        }
    }

    [Fact]
    public void A_file_that_came_since_it_was_looked_for_is_kept()
    {
        string path = In("a.csv");
        FileProblemException problem = Assert.Throws<FileProblemException>(
            () => WholeFile.Write(path, _ => File.WriteAllText(path, "somebody else's"), force: false));
        Assert.Contains("this cannot be written: ", problem.Message, StringComparison.Ordinal);
        Assert.Equal("somebody else's", File.ReadAllText(path));
        Assert.Single(Directory.GetFileSystemEntries(folder));
    }

    private static string Sealed(string text) => GeneratorMark.Sealed($"{GeneratorMark.CommentLine}\n{text}\n");

    private static string Fault(string path) =>
        Assert.Throws<FileProblemException>(() => WholeFile.Write(path, new string('x', 10), force: true)).Message;

    private string In(string name) => Path.Combine(folder, name);
}
