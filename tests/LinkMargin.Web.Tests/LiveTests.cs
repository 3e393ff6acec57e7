using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Changes;
using LinkMargin.Web.Answers;
using LinkMargin.Web.Live;
using LinkMargin.Web.Protocol;
using LinkMargin.Web.Serving;

namespace LinkMargin.Web.Tests;

/// <summary>What a page hears over its connection.</summary>
public sealed class LiveTests : IAsyncLifetime
{
    private ServedHouse house = null!;

    public async Task InitializeAsync() => house = await ServedHouse.Of(ServedHouse.Small);

    public async Task DisposeAsync() => await house.DisposeAsync();

    [Fact]
    public async Task The_house_comes_first_then_the_seats_then_the_maps_and_the_comparison()
    {
        using ClientWebSocket socket = await Connect();
        Assert.Equal("Plover End", (await Next(socket, "house")).GetProperty("name").GetString());
        await Watch(socket, 1, "shelf");
        JsonElement figures = await Next(socket, "figures");
        Assert.Equal(["sofa", "chair"], figures.GetProperty("seats").EnumerateArray().Select(seat => seat.GetProperty("seat").GetString()));
        JsonElement comparison = await Next(socket, "comparison");
        Assert.Equal(2, comparison.GetProperty("spots").GetArrayLength());
        Assert.False(comparison.TryGetProperty("findingInFile", out _));
        Assert.Equal(0, (await Next(socket, "cables")).GetProperty("spots").GetArrayLength());
    }

    [Fact]
    public async Task What_is_tried_stands_beside_what_the_file_has()
    {
        using ClientWebSocket socket = await Connect();
        await Next(socket, "house");
        await Watch(socket, 1, "shelf");
        JsonElement before = await Next(socket, "figures"), comparedBefore = await Next(socket, "comparison");
        Assert.False(before.GetProperty("seats")[0].TryGetProperty("inFileDb", out _));

        house.Tried.Do([new HouseChange(ChangeKinds.MoveSpot) { Name = "shelf", Level = 0, X = 3.1, Y = 1.4, Height = 0.9 }]);
        JsonElement after = await Next(socket, "figures"), compared = await Next(socket, "comparison");
        for (int seat = 0; seat < 2; seat++)
        {
            Assert.Equal(CountOn(before, seat), after.GetProperty("seats")[seat].GetProperty("inFileDb").GetDouble(), 1e-9);
            Assert.NotEqual(CountOn(before, seat), CountOn(after, seat));
        }

        Assert.Equal(comparedBefore.GetProperty("finding").GetString(), compared.GetProperty("findingInFile").GetString());

        static double CountOn(JsonElement figures, int seat) => figures.GetProperty("seats")[seat].GetProperty("countOnDb").GetDouble();
    }

    [Fact]
    public async Task The_figures_are_those_of_compare_at_the_dragged_place()
    {
        using ClientWebSocket socket = await Connect();
        await Next(socket, "house");
        await Watch(socket, 1, "shelf", new HouseChange(ChangeKinds.MoveSpot) { Name = "shelf", Level = 0, X = 3.1, Y = 1.4, Height = 0.9 });
        JsonElement figures = await Next(socket, "figures");

        var state = house.Tried.Current;
        House moved = state.Now.House with { Spots = [state.Now.House.Spots[0] with { Plan = new(3.1, 1.4), HeightMetres = 0.9 }] };
        var exact = HouseUncertainty.Of(new LinkModel(moved), moved.Spots, moved.Seats, state.Now.Uncertainty);
        foreach (JsonElement figure in figures.GetProperty("seats").EnumerateArray())
        {
            Seat seat = moved.Seats.Single(one => one.Name == figure.GetProperty("seat").GetString());
            Assert.Equal(exact.Between(moved.Spots[0], seat).MarginAtConfidenceDb, figure.GetProperty("countOnDb").GetDouble(), 1e-9);
        }

        Assert.Empty(house.Tried.Current.Steps);
    }

    [Fact]
    public async Task Figures_that_follow_a_hand_are_close_and_become_exact_where_it_rests()
    {
        using ClientWebSocket socket = await Connect();
        await Next(socket, "house");
        await Watch(socket, 1, "shelf");
        await Next(socket, "cables");
        await Watch(socket, 2, "shelf", new HouseChange(ChangeKinds.MoveSpot) { Name = "shelf", Level = 0, X = 1.4, Y = 1.1, Height = 1.2 });
        JsonElement following = await Next(socket, "figures"), resting = await Next(socket, "figures");
        Assert.Equal(2, following.GetProperty("generation").GetInt32());
        Assert.Equal(2, resting.GetProperty("generation").GetInt32());

        var state = house.Tried.Current;
        House moved = state.Now.House with { Spots = [state.Now.House.Spots[0] with { Plan = new(1.4, 1.1), HeightMetres = 1.2 }] };
        var exact = HouseUncertainty.Of(new LinkModel(moved), moved.Spots, moved.Seats, state.Now.Uncertainty);
        for (int i = 0; i < moved.Seats.Count; i++)
        {
            double countOnDb = exact.Between(moved.Spots[0], moved.Seats[i]).MarginAtConfidenceDb;

            // A console that is moved takes the slopes of the diffuse field from the seats: the same but for the accuracy of the solution.
            Assert.Equal(countOnDb, resting.GetProperty("seats")[i].GetProperty("countOnDb").GetDouble(), 1e-6);
            Assert.Equal(countOnDb, following.GetProperty("seats")[i].GetProperty("countOnDb").GetDouble(), 1.0);
        }
    }

    [Fact]
    public async Task A_console_that_is_let_go_gets_its_fine_map_before_the_comparison()
    {
        using ClientWebSocket socket = await Connect();
        await Next(socket, "house");
        await Watch(socket, 1, "shelf");
        await Next(socket, "cables");
        var move = new HouseChange(ChangeKinds.MoveSpot) { Name = "shelf", Level = 0, X = 1.4, Y = 1.1, Height = 1.2 };
        await Watch(socket, 2, "shelf", move);
        await Next(socket, "figures");
        await Painted(socket);
        house.Tried.Do([move]);
        await Next(socket, "house");
        await Painted(socket);
        await Watch(socket, 3, "shelf");
        var frames = new List<bool>();
        await Next(socket, "comparison", frames.Add);
        Assert.Contains(true, frames);
    }

    [Fact]
    public async Task Of_many_wishes_only_the_latest_must_be_answered_and_it_always_is()
    {
        using ClientWebSocket socket = await Connect();
        await Next(socket, "house");
        const int Wishes = 60;
        for (int i = 1; i <= Wishes; i++)
        {
            await Watch(socket, i, "shelf", new HouseChange(ChangeKinds.MoveSpot) { Name = "shelf", Level = 0, X = 0.5 + (0.05 * i), Y = 1, Height = 1 });
        }

        int answers = 0, generation;
        do
        {
            generation = (await Next(socket, "figures")).GetProperty("generation").GetInt32();
            answers++;
        }
        while (generation < Wishes);

        Assert.InRange(answers, 1, Wishes);
    }

    [Fact]
    public async Task Maps_that_are_not_painted_hold_back_further_maps_and_never_the_seats()
    {
        using ClientWebSocket socket = await Connect();
        await Next(socket, "house");
        int frames = 0;
        for (int i = 1; i <= 6; i++)
        {
            await Watch(socket, i, "shelf", new HouseChange(ChangeKinds.MoveSpot) { Name = "shelf", Level = 0, X = 0.5 + (0.1 * i), Y = 1, Height = 1 });
            await Next(socket, "figures", _ => frames++);
        }

        Assert.InRange(frames, 0, 2);
    }

    [Fact]
    public async Task A_change_by_one_page_reaches_the_other()
    {
        using ClientWebSocket one = await Connect(), other = await Connect();
        await Next(one, "house");
        await Next(other, "house");
        house.Tried.Do([new HouseChange(ChangeKinds.SetOpening) { Name = "study door", Level = 0, Open = true }]);
        Assert.Single((await Next(one, "house")).GetProperty("steps").EnumerateArray());
        Assert.Single((await Next(other, "house")).GetProperty("steps").EnumerateArray());
    }

    /// <summary>The word of a change may come when the page has taken the new house already, with a request; what it stops is begun again.</summary>
    [Fact]
    public async Task Late_word_of_a_change_does_not_take_the_fine_map_away()
    {
        using var word = new ManualResetEventSlim();
        var fields = new HeldFields();
        await house.Server.DisposeAsync();
        await house.Start(0, tried => new PageServices(tried, 0.9, fields));
        house.Tried.Changed += word.Wait; // before the page, which therefore hears of the change after it
        using ClientWebSocket socket = await Connect();
        await Next(socket, "house");
        await Watch(socket, 1, "shelf");
        await Next(socket, "cables");

        fields.HoldsNext = true;
        Task change = Task.Run(() => house.Tried.Do([new HouseChange(ChangeKinds.SetOpening) { Name = "study door", Level = 0, Open = true }]));
        while (house.Tried.Current.Version == 1)
        {
            await Task.Delay(1);
        }

        await Watch(socket, 2, "shelf");
        await fields.Begun.WaitAsync(Patience());
        word.Set();
        await change;
        Assert.Equal(2, (await Next(socket, "comparison")).GetProperty("version").GetInt32());
        Assert.Equal(3, fields.FineMaps); // the first, the one that was stopped, and that one again
    }

    [Theory]
    [InlineData("not json")]
    [InlineData("[1,2]")]
    [InlineData("{\"type\":\"watch\",\"generation\":\"x\"}")]
    [InlineData("{\"type\":\"watch\",\"generation\":1,\"spot\":\"no such spot\"}")]
    [InlineData("{\"type\":\"watch\",\"generation\":1,\"spot\":\"shelf\",\"preview\":{\"kind\":\"move-spot\",\"name\":\"shelf\",\"x\":1e308,\"y\":-1e308}}")]
    [InlineData("{\"type\":\"painted\"}")]
    public async Task What_makes_no_sense_leaves_the_connection_as_it_is(string text)
    {
        using ClientWebSocket socket = await Connect();
        await Next(socket, "house");
        await socket.SendAsync(Encoding.UTF8.GetBytes(text), WebSocketMessageType.Text, endOfMessage: true, Patience());
        await Watch(socket, 7, "desk");
        JsonElement figures;
        do
        {
            figures = await Next(socket, "figures");
        }
        while (figures.GetProperty("generation").GetInt32() != 7);

        Assert.Equal("desk", figures.GetProperty("spot").GetString());
    }

    [Fact]
    public async Task A_message_larger_than_any_page_sends_ends_that_connection_alone()
    {
        using ClientWebSocket socket = await Connect(), other = await Connect();
        await Next(socket, "house");
        await socket.SendAsync(new byte[200_000], WebSocketMessageType.Text, endOfMessage: true, Patience());
        await Assert.ThrowsAnyAsync<Exception>(async () =>
        {
            while (socket.State == WebSocketState.Open)
            {
                await Next(socket, "nothing");
            }

            throw new WebSocketException("closed");
        });
        await Next(other, "house");
    }

    [Fact]
    public void A_frame_holds_the_field_byte_for_byte()
    {
        var grid = new Grid(new(1.5, -2), 0.25, 2, 1);
        var median = new Field(new Spot("s", 0, new(0, 0), 1), 3, 0.7, grid, [12.5, double.NaN]);
        byte[] bytes = FieldFrame.Of(7, 9, FieldFrame.IsFine | FieldFrame.IsLast, median, median with { MarginDb = [5.25, double.NaN] });
        Assert.Equal(FieldFrame.HeaderBytes + 16, bytes.Length);
        Assert.Equal("LMF1", Encoding.ASCII.GetString(bytes, 0, 4));
        Assert.Equal([7, 9, 3, 3, 2, 1], Enumerable.Range(0, 6).Select(i => BitConverter.ToInt32(bytes, 4 + (4 * i))));
        Assert.Equal([1.5, -2, 0.25], Enumerable.Range(0, 3).Select(i => BitConverter.ToDouble(bytes, 28 + (8 * i))));
        Assert.Equal([12.5f, float.NaN, 5.25f, float.NaN], Enumerable.Range(0, 4).Select(i => BitConverter.ToSingle(bytes, FieldFrame.HeaderBytes + (4 * i))));
    }

    private static CancellationToken Patience() => new CancellationTokenSource(TimeSpan.FromSeconds(60)).Token;

    private async Task<ClientWebSocket> Connect()
    {
        var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Origin", house.Server.Origin);
        socket.Options.SetRequestHeader("Cookie", $"{Guard.CookieOf(house.Server.Port)}={house.Server.Admission.Key}");
        await socket.ConnectAsync(new Uri($"ws://127.0.0.1:{house.Server.Port}/live"), Patience());
        return socket;
    }

    private static Task Watch(ClientWebSocket socket, int generation, string spot, HouseChange? preview = null) => socket.SendAsync(
        JsonSerializer.SerializeToUtf8Bytes(new WatchRequest { Type = "watch", Generation = generation, Spot = spot, Preview = preview }, PageJson.Default.WatchRequest),
        WebSocketMessageType.Text,
        endOfMessage: true,
        Patience());

    private static Task Painted(ClientWebSocket socket) =>
        socket.SendAsync("{\"type\":\"painted\"}"u8.ToArray(), WebSocketMessageType.Text, endOfMessage: true, Patience());

    // The next message of a type; frames before it are passed on by whether they are fine.
    private static async Task<JsonElement> Next(ClientWebSocket socket, string type, Action<bool>? onFrame = null)
    {
        const int FlagsAt = 16;
        byte[] buffer = new byte[4 << 20];
        while (true)
        {
            int count = 0;
            WebSocketReceiveResult part;
            do
            {
                part = await socket.ReceiveAsync(new ArraySegment<byte>(buffer, count, buffer.Length - count), Patience());
                count += part.Count;
            }
            while (!part.EndOfMessage);

            if (part.MessageType == WebSocketMessageType.Close)
            {
                throw new WebSocketException("closed");
            }

            if (part.MessageType == WebSocketMessageType.Binary)
            {
                onFrame?.Invoke((BitConverter.ToInt32(buffer, FlagsAt) & FieldFrame.IsFine) != 0);
            }
            else if (JsonDocument.Parse(buffer.AsMemory(0, count)).RootElement is var message && message.GetProperty("type").GetString() == type)
            {
                return message.Clone();
            }
        }
    }

    // Fields whose fine map can be held until it is stopped.
    private sealed class HeldFields : ISpotFields
    {
        public bool HoldsNext { get; set; }

        public int FineMaps { get; private set; }

        public SemaphoreSlim Begun { get; } = new(0);

        public IReadOnlyList<(Field Median, Field CountOn)> Coarse(LinkModel model, Spot spot, double allowanceDb, CancellationToken cancellation)
        {
            Field field = FieldComputation.Compute(model, new FieldRequest(spot, 0) { CellMetres = 1, Stage = FieldStage.Coarse }, null, cancellation);
            return [(field, field)];
        }

        public IEnumerable<(Field Median, Field CountOn)> Fine(LinkModel model, Spot spot, int firstLevel, CancellationToken cancellation)
        {
            FineMaps++;
            if (HoldsNext)
            {
                HoldsNext = false;
                Begun.Release();
                cancellation.WaitHandle.WaitOne(TimeSpan.FromSeconds(30));
                cancellation.ThrowIfCancellationRequested();
            }

            return [];
        }
    }
}
