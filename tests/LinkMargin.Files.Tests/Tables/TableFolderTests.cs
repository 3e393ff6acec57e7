using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Tables;

public sealed class TableFolderTests
{
    private const string OneWall = "materials:\n  - {name: my-wall, what: w, loss: 3 dB, spread: 1 dB, source: from memory}\n";

    [Fact]
    public void A_copy_of_the_built_in_files_reads_the_same()
    {
        using TableFolder folder = TableFolder.OfBuiltIn();
        MaterialTablesResult read = folder.Read();
        MaterialTables builtIn = MaterialTablesFile.ReadBuiltIn().Tables!;
        Assert.Empty(read.Problems);
        Assert.Equal(builtIn.Materials.Keys, read.Tables!.Materials.Keys);
        Assert.Equal(builtIn.Materials.Values.Select(m => m.LossDb), read.Tables.Materials.Values.Select(m => m.LossDb));
        Assert.Equal(builtIn.Radios, read.Tables.Radios);
        Assert.Equal(Path.Combine(folder.Path, "radios.yaml"), read.Tables.Files!.Radios);
    }

    [Fact]
    public void A_file_that_is_not_there_is_the_built_in_one_and_a_note_says_so()
    {
        using TableFolder folder = TableFolder.OfBuiltIn();
        File.Delete(Path.Combine(folder.Path, "margins.yaml"));
        Problem note = Assert.Single(folder.Read().Problems);
        Assert.Equal(Severity.Warning, note.Severity);
        Assert.Equal("margins.yaml:1:1: this file does not exist, so the built-in one is used", Assert.Single(folder.Problems()));
        Assert.Equal("margins.yaml (built in)", folder.Read().Tables!.Files!.Margins);
        Assert.NotEmpty(folder.Read().Tables!.Margins);
    }

    [Fact]
    public void Built_in_floors_that_the_materials_given_cannot_make_are_left_out_with_a_note()
    {
        using TableFolder folder = new();
        folder.Write("materials.yaml", OneWall);
        MaterialTablesResult read = folder.Read();
        Assert.Equal(["my-wall"], read.Tables!.Materials.Keys);
        Assert.Empty(read.Tables.BuildUps);
        Assert.All(read.Problems, p => Assert.Equal(Severity.Warning, p.Severity));
        Assert.Contains(
            "floors.yaml (built in):1:1: only 0 of the built-in floor build-ups can be made of the given materials, so the others are omitted; put your own floors.yaml beside materials.yaml if a house needs them",
            folder.Problems());
    }

    [Fact]
    public void Floors_of_ones_own_must_be_made_of_the_materials_given()
    {
        using TableFolder folder = new();
        folder.Write("materials.yaml", OneWall);
        folder.Write("floors.yaml", "floors:\n  - {name: f, what: w, source: s, layers: [{of: my-wal, thickness: 9 mm}]}\n");
        Assert.Contains("floors.yaml:2:49: of: 'my-wal' is not a row of the material table; did you mean 'my-wall'?", folder.Problems());
        Assert.Null(folder.Read().Tables);
    }

    [Fact]
    public void Mistakes_in_all_files_are_reported_together()
    {
        using TableFolder folder = new();
        folder.Write("materials.yaml", "materials:\n  - {name: a, what: w, loss: -1, spread: 1, source: s}\n");
        folder.Write("floors.yaml", "floors:\n  - {name: f, what: w, source: s, layers: []}\n");
        folder.Write("radios.yaml", "radios:\n  - {name: r, what: w, transmit: 4 dB, gain: 0, sensitivity: -90, hand: 0, spread: 0, source: s}\n");
        folder.Write("spreads.yaml", "spreads: 3 dB\n");
        folder.Write("margins.yaml", "margins:\n  - {margin: 10, means: m, source: s}\n  - {margin: 10 dB, means: m, source: s}\n");
        Assert.Equal(
            [
                "materials.yaml:2:30: loss: '-1' (-1 dB) is outside the allowed 0 dB to 80 dB",
                "floors.yaml:2:43: layers: the list is empty; a floor needs at least one",
                "radios.yaml:2:34: transmit: '4 dB' has the unit 'dB', but this is a level in dBm; write -90 or -90 dBm (-40 dBm to 36 dBm is allowed)",
                "margins.yaml:3:14: margin: 10 dB appears twice; the first is in line 2, so change or remove one",
                "spreads.yaml:1:10: spreads: a list is needed (items that begin with '- ', or [ ... ]), not '3 dB'",
            ],
            folder.Problems());
    }

    [Theory]
    [InlineData("{thickness: 9 mm}", "a layer has either 'of', which names a row of the material table, or 'joists'; write one of the two")]
    [InlineData("{of: wall}", "of: a layer of 'wall' needs a thickness")]
    [InlineData("{of: air}", "of: a layer of 'air' needs a thickness")]
    [InlineData("{of: wall, thickness: 9 mm, fill: wall}", "fill: only a layer with 'joists' has a fill; write the layer's material as 'of'")]
    [InlineData("{of: wall, thickness: 9 mm, tolerance: 10 mm}", "is more than a layer 0.009 m thick allows")]
    [InlineData("{joists: {of: wall, width: 50 mm, depth: 200 mm, spacing: 400 mm}, thickness: 9 mm}", "thickness: a layer with 'joists' is as thick as the joists are deep; remove this key")]
    [InlineData("{joists: {of: wal, width: 50 mm, depth: 200 mm, spacing: 400 mm}}", "joists: 'wal' is not a row of the material table; did you mean 'wall'?")]
    [InlineData("{joists: {of: wall, width: 50 mm, depth: 200 mm, spacing: 49 mm}}", "spacing: '49 mm' (0.049 m) is outside the allowed 0.05 m to 3 m")]
    [InlineData("{joists: {of: wall, width: 50 mm, depth: 200 mm, spacing: 400 mm}, fill: wal}", "fill: 'wal' is not a row of the material table; did you mean 'wall'?")]
    [InlineData("{joists: {of: wall, width: 50 mm, depth: 200 mm}}", "a group of joists needs the key 'spacing'")]
    public void Mistakes_in_a_floor_are_reported(string layer, string message)
    {
        using TableFolder folder = new();
        folder.Write("materials.yaml", OneWall.Replace("my-wall", "wall", StringComparison.Ordinal));
        folder.Write("floors.yaml", $"floors:\n  - {{name: f, what: w, source: s, layers: [{layer}]}}\n");
        Problem mistake = Assert.Single(folder.Read().Problems, p => p.Severity == Severity.Error);
        Assert.Contains(message, mistake.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("transmit", "-40.1")]
    [InlineData("transmit", "36.1")]
    [InlineData("gain", "-30.1")]
    [InlineData("gain", "30.1")]
    [InlineData("sensitivity", "-140.1")]
    [InlineData("sensitivity", "-19.9")]
    [InlineData("hand", "-0.1")]
    [InlineData("hand", "40.1")]
    [InlineData("spread", "30.1")]
    [InlineData("gain-includes-mismatch", "perhaps")]
    [InlineData("source", "''")]
    public void Mistakes_in_a_radio_are_reported(string key, string value)
    {
        using TableFolder folder = new();
        folder.Write("radios.yaml", RadioWith(key, value));
        Problem mistake = Assert.Single(folder.Read().Problems, p => p.Severity == Severity.Error);
        Assert.StartsWith($"{key}: ", mistake.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("transmit", "-40")]
    [InlineData("transmit", "36")]
    [InlineData("gain", "-30")]
    [InlineData("gain", "20 dBi")]
    [InlineData("sensitivity", "-130 dBm")]
    [InlineData("sensitivity", "-20")]
    [InlineData("hand", "40")]
    [InlineData("spread", "30")]
    public void A_radio_at_a_limit_is_read(string key, string value)
    {
        using TableFolder folder = new();
        folder.Write("radios.yaml", RadioWith(key, value));
        Assert.Equal("r", Assert.Single(folder.Read().Tables!.Radios).Key);
    }

    [Theory]
    [InlineData(null, false)]
    [InlineData("false", false)]
    [InlineData("true", true)]
    public void A_radio_says_whether_its_gain_includes_the_mismatch_and_else_it_does_not(string? written, bool expected)
    {
        using TableFolder folder = new();
        folder.Write("radios.yaml", written is null ? RadioWith("gain", "0") : RadioWith("gain-includes-mismatch", written));
        Assert.Equal(expected, Assert.Single(folder.Read().Tables!.Radios).Value.GainIncludesMismatch);
    }

    [Fact]
    public void A_folder_that_is_not_one_gets_one_sentence()
    {
        using TableFolder folder = new();
        string missing = Path.Combine(folder.Path, "nowhere"), file = Path.Combine(folder.Path, "notes.txt");
        folder.Write("notes.txt", "x");
        Assert.EndsWith("nowhere:1:1: there is no such folder; check the name", OnlyOf(missing), StringComparison.Ordinal);
        Assert.EndsWith("notes.txt:1:1: this is a file; name the folder that holds it", OnlyOf(file), StringComparison.Ordinal);
        Assert.EndsWith(
            ":1:1: this folder holds none of materials.yaml, floors.yaml, radios.yaml, margins.yaml, spreads.yaml, cables.yaml; name the folder that holds the tables",
            OnlyOf(folder.Path),
            StringComparison.Ordinal);
    }

    private static string OnlyOf(string folder)
    {
        MaterialTablesResult result = MaterialTablesFile.ReadFolder(folder);
        Assert.Null(result.Tables);
        return Assert.Single(result.Problems).ToString();
    }

    private static string RadioWith(string key, string value)
    {
        Dictionary<string, string> keys = new()
        {
            ["name"] = "r", ["what"] = "w", ["transmit"] = "4", ["gain"] = "0", ["sensitivity"] = "-90", ["hand"] = "0",
            ["spread"] = "0", ["source"] = "s",
        };
        keys[key] = value;
        return $"radios:\n  - {{{string.Join(", ", keys.Select(pair => $"{pair.Key}: {pair.Value}"))}}}\n";
    }
}
