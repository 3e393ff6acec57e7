using LinkMargin.Files.Resources;
using LinkMargin.Files.Tables;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Live;
using LinkMargin.Web.Serving;

namespace LinkMargin.Web.Tests;

/// <summary>A house file in a folder of its own, served to this process.</summary>
internal sealed class ServedHouse : IAsyncDisposable
{
    public const string FileName = "house.yaml";

    /// <summary>A small house: one level, two rooms, so that a test waits for nothing.</summary>
    public const string Small = """
        house: Plover End
        levels:
          - name: ground
            height: 2.4
            outer: brick-block-cavity
            inner: drywall-stud
            rooms:
              - {name: lounge, corner: [0, 0], size: [4.0, 5.0]} # the big one
              - {name: study, corner: [4.0, 0], size: [3.0, 5.0]}
            doors:
              - {name: study door, between: [lounge, study], material: door-hollow}
        fixtures:
          - {name: bookcase, box: [3.2, 4.0, 3.8, 4.9], to: 2.0, material: bookcase}
        spots:
          - {name: shelf, at: [0.6, 0.6, 1.2]}
          - {name: desk, at: [6.4, 4.2, 0.8]}
        seats:
          - {name: sofa, at: [2.0, 3.0], facing: south}
          - {name: chair, at: [5.5, 2.5], facing: west}

        """;

    private ServedHouse(string text) => File.WriteAllText(HouseFile, text);

    public PageServer Server { get; private set; } = null!;

    public string Folder { get; } = Directory.CreateTempSubdirectory("linkmargin-test-").FullName;

    public string HouseFile => Path.Combine(Folder, FileName);

    public string StateFolder => Path.Combine(Folder, "state");

    public string Text => File.ReadAllText(HouseFile);

    public TriedHouse Tried => Server.Services.Tried;

    public static Task<ServedHouse> OfDemo() => Of(DemoHouse.Text);

    public static async Task<ServedHouse> Of(string text)
    {
        var served = new ServedHouse(text);
        await served.Start(0);
        return served;
    }

    public static HouseSource SourceOf(string path) =>
        new(path, Path.GetFileName(path), MaterialTablesFile.ReadBuiltIn().Tables!, null);

    public async Task Start(int port, Func<TriedHouse, PageServices>? services = null)
    {
        TriedHouse tried = TriedHouse.Open(SourceOf(HouseFile), StateFolder, []);
        Server = await PageServer.Start(tried, 0.9, port, services?.Invoke(tried));
    }

    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }
}
