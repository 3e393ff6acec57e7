using LinkMargin.Web.Serving;

namespace LinkMargin.Web.Tests;

/// <summary>Attacks on the server, each as another program or another site on this machine would try it.</summary>
public sealed class SecurityTests : IAsyncLifetime
{
    private ServedHouse house = null!;

    private int Port => house.Server.Port;

    private string Host => $"Host: 127.0.0.1:{Port}";

    private string Origin => $"Origin: http://127.0.0.1:{Port}";

    private string Cookie => $"Cookie: {Guard.CookieOf(Port)}={house.Server.Admission.Key}";

    private const string Json = "Content-Type: application/json";

    public async Task InitializeAsync() => house = await ServedHouse.Of(ServedHouse.Small);

    public async Task DisposeAsync() => await house.DisposeAsync();

    [Fact]
    public async Task It_listens_on_this_machine_alone()
    {
        // Every other address of this machine is one that a network reaches.
        foreach (System.Net.IPAddress address in (await System.Net.Dns.GetHostAddressesAsync(System.Net.Dns.GetHostName())).Where(one => !System.Net.IPAddress.IsLoopback(one)))
        {
            using var client = new System.Net.Sockets.TcpClient(address.AddressFamily);
            await Assert.ThrowsAnyAsync<System.Net.Sockets.SocketException>(() => client.ConnectAsync(address, Port));
        }
    }

    [Theory]
    [InlineData("GET /")]
    [InlineData("GET /page/main.js")]
    [InlineData("GET /link?spot=shelf&seat=sofa")]
    [InlineData("GET /materials")]
    [InlineData("GET /export/house.yaml")]
    [InlineData("GET /export/report.pdf?spot=shelf")]
    [InlineData("GET /page/regular.ttf")]
    [InlineData("GET /live")]
    [InlineData("POST /undo")]
    [InlineData("POST /changes")]
    [InlineData("POST /save")]
    [InlineData("POST /end")]
    [InlineData("GET /nothing")]
    public async Task Nothing_answers_without_the_key(string request)
    {
        Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, request, Host, Origin, Json)));
        Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, request, Host, Origin, Json, $"Cookie: {Guard.CookieOf(Port)}=0000")));
        Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, request, Host, Origin, Json, $"Cookie: {Guard.CookieOf(Port + 1)}={house.Server.Admission.Key}")));
        Assert.False(house.Server.Ended.IsCompleted);
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:1")]
    [InlineData("localhost:{port}")]
    [InlineData("[::1]:{port}")]
    [InlineData("127.0.0.1:{port}.evil.example")]
    [InlineData("evil.example:{port}")]
    [InlineData("")]
    public async Task A_name_rebound_to_this_machine_is_refused(string host)
    {
        string answer = await RawRequest.Send(Port, "GET /", $"Host: {host.Replace("{port}", $"{Port}", StringComparison.Ordinal)}", Cookie);
        Assert.True(RawRequest.StatusOf(answer) is 400 or 421, answer);
        Assert.DoesNotContain("<html", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_hosts_are_refused() =>
        Assert.Equal(400, RawRequest.StatusOf(await RawRequest.Send(Port, "GET /", Host, "Host: evil.example", Cookie)));

    [Theory]
    [InlineData("http://evil.example")]
    [InlineData("null")]
    [InlineData("http://127.0.0.1")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("https://127.0.0.1:{port}")]
    [InlineData("http://localhost:{port}")]
    [InlineData("http://127.0.0.1:{port}.evil.example")]
    [InlineData("HTTP://127.0.0.1:{port}/")]
    public async Task Another_site_is_refused_even_with_the_key(string origin)
    {
        string header = $"Origin: {origin.Replace("{port}", $"{Port}", StringComparison.Ordinal)}";
        foreach (string request in new[] { "GET /", "POST /undo", "POST /end", "GET /live" })
        {
            Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, request, Host, header, Cookie, Json)));
        }

        Assert.False(house.Server.Ended.IsCompleted);
    }

    [Fact]
    public async Task What_changes_something_must_say_where_it_comes_from()
    {
        Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, "POST /undo", Host, Cookie, Json)));
        Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, "POST /undo", Host, Origin, Cookie, Json, "Sec-Fetch-Site: same-site")));
        Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, "GET /", Host, Cookie, "Sec-Fetch-Site: cross-site")));
        Assert.Equal(200, RawRequest.StatusOf(await RawRequest.Send(Port, "POST /undo", Host, Origin, Cookie, Json, "Sec-Fetch-Site: same-origin")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("Origin: http://evil.example")]
    [InlineData("Origin: null")]
    public async Task A_socket_of_another_site_is_refused(string origin)
    {
        string[] headers = [Host, Cookie, "Upgrade: websocket", "Connection: Upgrade", "Sec-WebSocket-Version: 13", "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==", .. origin.Length > 0 ? new[] { origin } : []];
        Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, "GET /live", headers)));
    }

    [Fact]
    public async Task A_form_of_another_site_is_no_request()
    {
        // What a form can send without asking first: refused for its origin, and again for its type.
        string answer = await RawRequest.Send(Port, "POST /changes", [Host, Origin, Cookie, "Content-Type: text/plain"], """{"changes":[{"kind":"people","seats":[]}]}""");
        Assert.Equal(400, RawRequest.StatusOf(answer));
        Assert.Empty(house.Tried.Current.Steps);
    }

    [Fact]
    public async Task A_token_works_once_and_leaves_the_address()
    {
        string address = house.Server.NewAddress(), path = new Uri(address).PathAndQuery;
        string answer = await RawRequest.Send(Port, $"GET {path}", Host);
        Assert.Equal(303, RawRequest.StatusOf(answer));
        Assert.Contains("\r\nLocation: /\r\n", answer, StringComparison.Ordinal);
        Assert.Contains($"Set-Cookie: {Guard.CookieOf(Port)}={house.Server.Admission.Key}; path=/; samesite=strict; httponly", answer, StringComparison.Ordinal);
        Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, $"GET {path}", Host)));
        Assert.Equal(200, RawRequest.StatusOf(await RawRequest.Send(Port, "GET /", Host, Cookie)));
        Assert.DoesNotContain(house.Server.Admission.Key, address, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("%00")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    public async Task No_other_token_works(string token) =>
        Assert.Equal(403, RawRequest.StatusOf(await RawRequest.Send(Port, $"GET /?token={token}", Host)));

    [Fact]
    public void Each_start_has_a_token_and_a_key_of_its_own()
    {
        var one = new Admission();
        var other = new Admission();
        Assert.NotEqual(one.Key, other.Key);
        Assert.NotEqual(one.NewToken(), one.NewToken());
        Assert.False(one.Redeem(other.NewToken()));
        Assert.False(one.Redeem(null));
        Assert.Equal(64, one.Key.Length);
    }

    [Fact]
    public async Task The_page_runs_no_script_but_its_own()
    {
        string answer = await RawRequest.Send(Port, "GET /", Host, Cookie);
        string policy = answer.Split("\r\n").Single(line => line.StartsWith("Content-Security-Policy: ", StringComparison.Ordinal));
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("*", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        foreach (string header in new[] { "X-Content-Type-Options: nosniff", "Cache-Control: no-store", "Referrer-Policy: no-referrer", "Cross-Origin-Opener-Policy: same-origin", "X-Frame-Options: DENY" })
        {
            Assert.Contains($"\r\n{header}\r\n", answer, StringComparison.OrdinalIgnoreCase);
        }

        Assert.DoesNotContain("Access-Control", answer, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("\r\nServer:", answer, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void No_file_of_the_page_makes_markup_of_text_or_asks_elsewhere()
    {
        Assert.NotEmpty(Assets.Texts);
        foreach (string name in Assets.Texts)
        {
            using var reader = new StreamReader(typeof(Assets).Assembly.GetManifestResourceStream($"page/{name}")!);
            string text = reader.ReadToEnd();
            foreach (string forbidden in new[] { "innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(", "new Function", "https://", "srcdoc", "localStorage" })
            {
                Assert.DoesNotContain(forbidden, text, StringComparison.Ordinal);
            }

            Assert.DoesNotContain("<script>", text, StringComparison.Ordinal);
            Assert.DoesNotContain(" style=", text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("GET /page/../house.yaml")]
    [InlineData("GET /page/..%2fhouse.yaml")]
    [InlineData("GET /page/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("GET /page/house.yaml")]
    [InlineData("GET /page/main.js%00.html")]
    [InlineData("GET /house.yaml")]
    [InlineData("GET /export/..%2fhouse.yaml")]
    [InlineData("GET /export/passwd")]
    public async Task No_path_leads_to_a_file(string request)
    {
        string answer = await RawRequest.Send(Port, request, Host, Cookie);
        Assert.True(RawRequest.StatusOf(answer) is 400 or 404, answer);
        Assert.DoesNotContain("Plover End", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../stolen.yaml")]
    [InlineData("sub/stolen.yaml")]
    [InlineData("/tmp/stolen.yaml")]
    [InlineData("..\\\\stolen.yaml")]
    [InlineData("C:stolen.yaml")]
    [InlineData(".hidden.yaml")]
    [InlineData("house.yaml.journal")]
    [InlineData("stolen.sh")]
    [InlineData("stolen")]
    [InlineData(" stolen.yaml")]
    [InlineData("-stolen.yaml")]
    [InlineData("sto\\u0000len.yaml")]
    [InlineData("sto\\u202elen.yaml")]
    public async Task A_name_that_leaves_the_folder_is_not_written(string name)
    {
        string[] before = FilesOf(house.Folder);
        string answer = await RawRequest.Send(Port, "POST /save", [Host, Origin, Cookie, Json], $"{{\"name\":\"{name}\"}}");
        Assert.Equal(400, RawRequest.StatusOf(answer));
        Assert.Equal(before, FilesOf(house.Folder));
    }

    [Fact]
    public async Task A_file_that_is_there_is_not_written_over()
    {
        string other = Path.Combine(house.Folder, "other.yaml");
        await File.WriteAllTextAsync(other, "mine");
        string answer = await RawRequest.Send(Port, "POST /save", [Host, Origin, Cookie, Json], """{"name":"other.yaml"}""");
        Assert.Equal(409, RawRequest.StatusOf(answer));
        Assert.Equal("mine", await File.ReadAllTextAsync(other));
    }

    [Theory]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("""{"changes":[{"kind":"move-spot","name":"shelf","x":1e999,"y":0}]}""")]
    [InlineData("""{"changes":[{"kind":"move-spot","name":"shelf","x":1e300,"y":0}]}""")]
    [InlineData("""{"changes":[{"kind":"move-spot","name":"no such","x":1,"y":1}]}""")]
    [InlineData("""{"changes":[{"kind":"move-seat","name":"sofa","level":-1,"x":1,"y":1}]}""")]
    [InlineData("""{"changes":[{"kind":"set-opening","name":"study door","level":99,"open":true}]}""")]
    [InlineData("""{"changes":[{"kind":"__proto__"}]}""")]
    [InlineData("""{"changes":[]}""")]
    [InlineData("""{"changes":[{}]}""")]
    public async Task A_request_that_makes_no_sense_changes_nothing(string body)
    {
        string answer = await RawRequest.Send(Port, "POST /changes", [Host, Origin, Cookie, Json], body);
        Assert.Equal(400, RawRequest.StatusOf(answer));
        Assert.DoesNotContain("   at ", answer, StringComparison.Ordinal);
        Assert.Empty(house.Tried.Current.Steps);
    }

    [Fact]
    public async Task A_request_larger_than_any_page_sends_is_refused()
    {
        string answer = await RawRequest.Send(Port, "POST /changes", [Host, Origin, Cookie, Json], "{\"changes\":\"" + new string('x', 300_000) + "\"}");
        Assert.True(RawRequest.StatusOf(answer) is 400 or 413, answer);
        Assert.Equal(200, RawRequest.StatusOf(await RawRequest.Send(Port, "GET /", Host, Cookie)));
    }

    private static string[] FilesOf(string folder) => [.. Directory.EnumerateFileSystemEntries(Path.GetDirectoryName(folder)!, "*stolen*"), .. Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal)];
}
