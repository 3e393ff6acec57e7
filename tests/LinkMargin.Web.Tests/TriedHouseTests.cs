using LinkMargin.Files.Changes;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Journals;
using LinkMargin.Files.Writing;
using LinkMargin.Web.Exports;
using LinkMargin.Web.Houses;

namespace LinkMargin.Web.Tests;

/// <summary>What is tried is never lost, and never in the file before somebody says so.</summary>
public sealed class TriedHouseTests : IDisposable
{
    private static readonly HouseChange Move = new(ChangeKinds.MoveSpot) { Name = "shelf", Level = 0, X = 1.5, Y = 2.25, Height = 1.2 };
    private static readonly HouseChange Open = new(ChangeKinds.SetOpening) { Name = "study door", Level = 0, Open = true };

    private readonly string folder = Directory.CreateTempSubdirectory("linkmargin-test-").FullName;

    public TriedHouseTests() => File.WriteAllText(HouseFile, ServedHouse.Small);

    private string HouseFile => Path.Combine(folder, "house.yaml");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Undo_and_redo_take_back_and_bring_back_everything()
    {
        using TriedHouse tried = Opened();
        string before = SpotOf(tried);
        tried.Do([Move]);
        tried.Do([Open, new HouseChange(ChangeKinds.People) { Seats = ["sofa"] }]);
        string after = SpotOf(tried);
        Assert.True(IsDoorOpen(tried));
        Assert.Equal(["sofa"], tried.Current.People);

        tried.Undo();
        Assert.False(IsDoorOpen(tried));
        Assert.Empty(tried.Current.People);
        Assert.Equal(after, SpotOf(tried));
        tried.Undo();
        tried.Undo();
        Assert.Equal(before, SpotOf(tried));
        tried.Redo();
        tried.Redo();
        tried.Redo();
        Assert.True(IsDoorOpen(tried));
        Assert.Equal(after, SpotOf(tried));
        Assert.Equal(ServedHouse.Small, File.ReadAllText(HouseFile));
    }

    [Fact]
    public void A_step_of_several_changes_is_made_whole_or_not_at_all()
    {
        using TriedHouse tried = Opened();
        Assert.Throws<EditFaultException>(() => tried.Do([Open, Move with { X = 99 }]));
        Assert.False(IsDoorOpen(tried));
        Assert.Empty(tried.Current.Steps);
    }

    [Fact]
    public void After_a_crash_the_steps_are_offered()
    {
        // A crash leaves the journal as it is: copied while the page is open.
        string copy = Path.Combine(folder, "copy");
        using (TriedHouse tried = Opened())
        {
            tried.Do([Move]);
            tried.Do([Open]);
            tried.Undo();
            File.WriteAllBytes(copy, tried.Journal.Bytes());
        }

        File.Move(copy, Journal.BesideOf(HouseFile), overwrite: true);
        using TriedHouse again = Opened();
        Assert.Equal(1, again.Recoverable);
        Assert.Empty(again.Current.Steps);
        Assert.Throws<EditFaultException>(() => again.Do([Open]));
        Assert.Empty(again.Recover(goOn: true));
        Assert.Single(again.Current.Steps);
        Assert.False(IsDoorOpen(again));
        Assert.Equal(1.5, again.Current.Now.House.Spots[0].Plan.X);
        Assert.Equal(0, again.Recoverable);
    }

    [Fact]
    public void Ended_with_steps_that_are_not_saved_they_are_offered_and_can_be_discarded()
    {
        using (TriedHouse tried = Opened())
        {
            tried.Do([Move]);
        }

        using (TriedHouse again = Opened())
        {
            Assert.Equal(1, again.Recoverable);
            again.Recover(goOn: false);
        }

        Assert.False(File.Exists(Journal.BesideOf(HouseFile)));
    }

    [Fact]
    public void A_journal_cut_short_at_any_byte_loses_the_last_entry_alone()
    {
        byte[] whole;
        int afterFirst;
        using (TriedHouse tried = Opened())
        {
            tried.Do([Move]);
            afterFirst = tried.Journal.Bytes().Length;
            tried.Do([Open]);
            whole = tried.Journal.Bytes();
        }

        for (int length = afterFirst; length < whole.Length; length++)
        {
            File.WriteAllBytes(Journal.BesideOf(HouseFile), whole[..length]);
            using var journal = Journal.Open(HouseFile, folder);
            Assert.Single(journal.Found.Entries);
            Assert.False(journal.Found.IsDamaged && length == afterFirst);
        }
    }

    [Fact]
    public void A_damaged_journal_gives_what_stands_before_the_damage_and_says_so()
    {
        byte[] whole;
        using (TriedHouse tried = Opened())
        {
            tried.Do([Move]);
            tried.Do([Open]);
            whole = tried.Journal.Bytes();
        }

        int second = Array.IndexOf(whole, (byte)'\n') + 30;
        whole[second] ^= 1;
        File.WriteAllBytes(Journal.BesideOf(HouseFile), whole);
        using var journal = Journal.Open(HouseFile, folder);
        Assert.True(journal.Found.IsDamaged);
        Assert.Empty(journal.Found.Entries);
    }

    [Fact]
    public void Beside_a_journal_that_cannot_be_written_the_users_folder_is_used()
    {
        // A folder of that name is in the way, for every user: even for one who may write everywhere.
        Directory.CreateDirectory(Journal.BesideOf(HouseFile));
        using TriedHouse tried = Opened();
        Assert.False(tried.Journal.IsBeside);
        Assert.StartsWith(Path.Combine(folder, "state"), tried.Journal.Path, StringComparison.Ordinal);
        tried.Do([Move]);
    }

    [Fact]
    public void Two_servers_do_not_open_one_house()
    {
        using TriedHouse tried = Opened();
        Assert.Contains("another page", Assert.Throws<FileProblemException>(Opened).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_edited_beside_the_page_is_taken_up_with_what_is_tried_on_top()
    {
        using TriedHouse tried = Opened();
        tried.Do([Move]);
        File.WriteAllText(HouseFile, ServedHouse.Small.Replace("height: 2.4", "height: 2.5", StringComparison.Ordinal));
        Assert.Empty(tried.Reload()!);
        Assert.Equal(2.5, tried.Current.Now.House.Levels[0].HeightMetres);
        Assert.Equal(1.5, tried.Current.Now.House.Spots[0].Plan.X);
        Assert.Equal(0.6, tried.Current.InFile.House.Spots[0].Plan.X);
    }

    [Fact]
    public void A_file_with_errors_leaves_the_last_house_and_says_where_they_are()
    {
        using TriedHouse tried = Opened();
        tried.Do([Move]);
        File.WriteAllText(HouseFile, ServedHouse.Small.Replace("material: door-hollow", "material: door-holow", StringComparison.Ordinal));
        tried.Reload();
        var problem = Assert.Single(tried.Problems, one => one.Severity == LinkMargin.Files.Problems.Severity.Error);
        Assert.Equal(11, problem.Mark.Line);
        Assert.Contains("door-hollow", problem.Message, StringComparison.Ordinal);
        Assert.Single(tried.Current.Steps);

        File.WriteAllText(HouseFile, ServedHouse.Small + "\n# mended\n");
        tried.Reload();
        Assert.DoesNotContain(tried.Problems, one => one.Severity == LinkMargin.Files.Problems.Severity.Error);
        Assert.Equal(1.5, tried.Current.Now.House.Spots[0].Plan.X);
    }

    [Fact]
    public void Saving_changes_the_letters_of_the_change_and_goes_on_from_there()
    {
        using TriedHouse tried = Opened();
        tried.Do([Move]);
        Assert.True(new Saving(tried).Save("").Ok);
        Assert.Equal(ServedHouse.Small.Replace("at: [0.6, 0.6, 1.2]", "at: [1.5, 2.25, 1.2]", StringComparison.Ordinal), File.ReadAllText(HouseFile));
        Assert.Empty(tried.Current.Steps);
        Assert.Equal(1.5, tried.Current.InFile.House.Spots[0].Plan.X);
    }

    [Fact]
    public void A_file_that_changed_on_disk_is_not_written_over()
    {
        using TriedHouse tried = Opened();
        tried.Do([Move]);
        string theirs = ServedHouse.Small.Replace("Plover End", "Plover's End", StringComparison.Ordinal);
        File.WriteAllText(HouseFile, theirs);
        var answer = new Saving(tried).Save("");
        Assert.False(answer.Ok);
        Assert.Contains(answer.Lines!, line => line.Contains("Plover's End", StringComparison.Ordinal));
        Assert.Equal(theirs, File.ReadAllText(HouseFile));

        tried.Reload();
        Assert.True(new Saving(tried).Save("").Ok);
        Assert.Equal(theirs.Replace("at: [0.6, 0.6, 1.2]", "at: [1.5, 2.25, 1.2]", StringComparison.Ordinal), File.ReadAllText(HouseFile));
    }

    [Fact]
    public void A_copy_leaves_the_house_file_and_what_is_tried()
    {
        using TriedHouse tried = Opened();
        tried.Do([Open]);
        Assert.True(new Saving(tried).Save("copy.yaml").Ok);
        Assert.Equal(ServedHouse.Small, File.ReadAllText(HouseFile));
        Assert.Contains("material: door-hollow, open: true}", File.ReadAllText(Path.Combine(folder, "copy.yaml")), StringComparison.Ordinal);
        Assert.Single(tried.Current.Steps);
    }

    private static string SpotOf(TriedHouse tried) => tried.Current.Now.House.Spots[0].ToString();

    private static bool IsDoorOpen(TriedHouse tried) =>
        tried.Current.Now.House.Levels[0].Walls.SelectMany(wall => wall.Openings).Single(opening => opening.Name == "study door").IsOpen;

    private TriedHouse Opened() => TriedHouse.Open(ServedHouse.SourceOf(HouseFile), Path.Combine(folder, "state"), []);
}
