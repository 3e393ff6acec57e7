using System.IO.Compression;
using System.Text;
using System.Text.Json;
using LinkMargin.Files.Bundles;
using LinkMargin.Files.Resources;

namespace LinkMargin.Cli.Tests.Commands;

/// <summary>An archive of everything, and archives that nobody should open.</summary>
public sealed class BundleTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public BundleTests() => folder.Put("house.yaml", SampleFile.Modest);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Every_command_opens_it_in_place_of_the_house_file()
    {
        CommandRun written = Report("--bundle", "all.zip");
        Assert.Equal("all.zip", CommandRun.In(folder.Path, Words("--bundle", "all.zip", "--json")).Json.GetProperty("bundle").GetString());
        Assert.Contains("all.zip: house file, tables, report; every command opens it", written.OutputUnwrapped, StringComparison.Ordinal);
        foreach (string[] command in (string[][])
        [
            ["explain", "HOUSE", "--spot", "den rack", "--seat", "sofa", "--model", "direct"],
            ["compare", "HOUSE", "--model", "direct", "--json"],
            ["check", "HOUSE", "--out", "out"],
            ["improve", "HOUSE", "--model", "direct", "--json"],
        ])
        {
            CommandRun plain = CommandRun.In(folder.Path, [.. command.Select(word => word.Replace("HOUSE", "house.yaml", StringComparison.Ordinal))]);
            CommandRun bundled = CommandRun.In(folder.Path, [.. command.Select(word => word.Replace("HOUSE", "all.zip", StringComparison.Ordinal))]);
            Assert.Equal((plain.ExitCode, plain.Output.Replace("house", "all", StringComparison.Ordinal)), (bundled.ExitCode, bundled.Output.Replace("house", "all", StringComparison.Ordinal).Replace("all.zip", "all.yaml", StringComparison.Ordinal)));
        }
    }

    /// <summary>The tables in the archive count, not those of the program that opens it.</summary>
    [Fact]
    public void It_holds_the_tables_that_were_in_use()
    {
        Directory.CreateDirectory(folder.PathOf("mine"));
        CommandRun.In(folder.Path, Words("--bundle", "all.zip"));
        using (ZipArchive archive = ZipFile.OpenRead(folder.PathOf("all.zip")))
        {
            using var materials = new StreamReader(archive.GetEntry("tables/materials.yaml")!.Open());
            folder.Put("mine/materials.yaml", materials.ReadToEnd().Replace("- name: brick-215\n", "- name: brick-216\n", StringComparison.Ordinal));
        }

        folder.Put("house.yaml", SampleFile.Modest.Replace("brick-215", "brick-216", StringComparison.Ordinal));
        Assert.Equal(2, CommandRun.In(folder.Path, "compare", "house.yaml", "--model", "direct").ExitCode); // no such row in the program
        Assert.NotEqual(2, CommandRun.In(folder.Path, Words("--materials", "mine", "--bundle", "mine.zip")).ExitCode);
        Assert.NotEqual(2, CommandRun.In(folder.Path, "compare", "mine.zip", "--model", "direct").ExitCode);
    }

    [Fact]
    public void Fitted_losses_and_measurements_travel_with_it()
    {
        Directory.CreateDirectory(folder.PathOf("demo"));
        folder.Put("demo/tern-terrace.yaml", DemoHouse.Text); // as the demo leaves them
        folder.Put("demo/tern-terrace-measurements.csv", DemoMeasurements.Text);
        string[] demo = ["demo/tern-terrace.yaml", "demo/tern-terrace-measurements.csv"];
        Assert.Equal(0, CommandRun.In(folder.Path, "fit", demo[0], demo[1], "--model", "direct", "--out", "fitted.yaml").ExitCode);
        CommandRun run = CommandRun.In(
            folder.Path, "report", demo[0], "--model", "direct", "--cell", "1", "--out", "r.html", "--fitted", "fitted.yaml", "--measurements", demo[1], "--bundle", "all.zip");
        Assert.Equal(1, run.ExitCode);
        using (ZipArchive archive = ZipFile.OpenRead(folder.PathOf("all.zip")))
        {
            Assert.Equal(
                ["contents.json", "fitted.yaml", "measurements.csv", "r.html", "tables/cables.yaml", "tables/floors.yaml", "tables/margins.yaml", "tables/materials.yaml", "tables/radios.yaml", "tables/spreads.yaml", "tern-terrace.yaml"],
                archive.Entries.Select(entry => entry.FullName).Order(StringComparer.Ordinal));
        }

        JsonElement plain = CommandRun.In(folder.Path, "compare", demo[0], "--model", "direct", "--fitted", "fitted.yaml", "--json").Json;
        Assert.Equal(plain.GetRawText(), CommandRun.In(folder.Path, "compare", "all.zip", "--model", "direct", "--json").Json.GetRawText());
        Assert.True(plain.GetProperty("fittedToMeasurements").GetInt32() > 0);
    }

    [Fact]
    public void The_same_content_gives_the_same_archive_and_the_program_replaces_only_its_own()
    {
        Report("--bundle", "a.zip");
        Bundle bundle = Bundle.Read(folder.PathOf("a.zip"));
        using (MemoryStream one = new(), other = new())
        {
            bundle.Write(one);
            bundle.Write(other);
            Assert.Equal(one.ToArray(), other.ToArray());
        }

        Assert.Equal(1, Report("--bundle", "a.zip").ExitCode); // written; a seat does not pass
        Zip("mine.zip", ("notes.txt", "mine"));
        Assert.Equal(2, Report("--bundle", "mine.zip").ExitCode);
        Assert.Equal(2, CommandRun.In(folder.Path, "report", "a.zip", "--model", "direct", "--cell", "1", "--out", "r.html", "--bundle", "a.zip").ExitCode); // it reads it
    }

    [Theory]
    [InlineData("../house.yaml", "leads outside the archive")]
    [InlineData("/etc/house.yaml", "leads outside the archive")]
    [InlineData("a/../../house.yaml", "leads outside the archive")]
    [InlineData("a\\..\\house.yaml", "leads outside the archive")]
    [InlineData("c:house.yaml", "leads outside the archive")]
    [InlineData("other.yaml", "this archive holds 2 house files ('house.yaml', 'other.yaml'); a bundle has one")]
    [InlineData("house.yaml", "holds 'house.yaml' twice")]
    [InlineData("HOUSE.YAML", "twice")]
    public void An_archive_with_what_it_must_not_hold_is_refused(string name, string sentence)
    {
        Zip("bad.zip", ("house.yaml", SampleFile.Modest), (name, SampleFile.Modest));
        CommandRun run = CommandRun.In(folder.Path, "compare", "bad.zip", "--model", "direct");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(sentence, run.ErrorUnwrapped, StringComparison.Ordinal);
        Assert.Equal(["bad.zip", "house.yaml"], folder.Files);
    }

    [Fact]
    public void A_bomb_is_not_unpacked()
    {
        Zip("bomb.zip", ("house.yaml", new string(' ', 80 * 1024 * 1024)));
        Assert.True(new FileInfo(folder.PathOf("bomb.zip")).Length < 200_000);
        Refused("bomb.zip", "would be larger than the allowed");
        Zip("large.zip", ("house.yaml", SampleFile.Modest + new string(' ', 20 * 1024 * 1024)));
        Refused("large.zip", "is larger than the allowed");

        // A size that is a lie: what the archive says of the house file is made smaller than it is.
        Zip("liar.zip", ("house.yaml", SampleFile.Modest));
        byte[] bytes = File.ReadAllBytes(folder.PathOf("liar.zip"));
        int directory = bytes.AsSpan().IndexOf("PK\u0001\u0002"u8);
        bytes[directory + 24] = 10;
        bytes[directory + 25] = 0;
        File.WriteAllBytes(folder.PathOf("liar.zip"), bytes);
        Assert.Equal(2, CommandRun.In(folder.Path, "compare", "liar.zip", "--model", "direct").ExitCode);
    }

    [Fact]
    public void What_is_no_bundle_or_damaged_is_said()
    {
        Zip("empty.zip", ("notes.txt", "nothing"));
        Refused("empty.zip", "this archive holds no house file");
        File.WriteAllBytes(folder.PathOf("cut.zip"), [.. "PK\u0003\u0004"u8, 1, 2, 3]);
        Refused("cut.zip", "this archive is damaged");
        Zip("broken.zip", ("house.yaml", "levels: [}"));
        Refused("broken.zip", "broken.zip: house.yaml:1:");
        Refused("house.yaml", "--measurements says what goes into a bundle", "report", "--measurements", "x.csv");
    }

    private void Refused(string file, string sentence, string command = "compare", params string[] more)
    {
        CommandRun run = CommandRun.In(folder.Path, [command, file, "--model", "direct", .. more]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(sentence, run.ErrorUnwrapped, StringComparison.Ordinal);
    }

    private void Zip(string name, params (string Name, string Text)[] files)
    {
        using var output = new FileStream(folder.PathOf(name), FileMode.Create);
        using var archive = new ZipArchive(output, ZipArchiveMode.Create);
        foreach ((string entry, string text) in files)
        {
            using Stream stream = archive.CreateEntry(entry).Open();
            stream.Write(Encoding.UTF8.GetBytes(text));
        }
    }

    private static string[] Words(params string[] more) => ["report", "house.yaml", "--model", "direct", "--cell", "1", "--out", "r.html", .. more];

    private CommandRun Report(params string[] more) => CommandRun.In(folder.Path, Words(more));
}
