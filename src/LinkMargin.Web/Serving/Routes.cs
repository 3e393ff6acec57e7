using System.Net.WebSockets;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Writing;
using LinkMargin.Reports.Houses;
using LinkMargin.Web.Answers;
using LinkMargin.Web.Exports;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Live;
using LinkMargin.Web.Protocol;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace LinkMargin.Web.Serving;

/// <summary>The routes of the server. Every request here has passed <see cref="Guard"/>.</summary>
/// <param name="services">Services shared by all pages.</param>
/// <param name="end">Ends the program.</param>
/// <param name="stopping">Cancelled when the server stops.</param>
internal sealed class Routes(PageServices services, Action end, CancellationToken stopping)
{
    private const int MostFound = 12;

    private TriedHouse Tried => services.Tried;

    /// <summary>Adds the routes.</summary>
    public void AddTo(WebApplication app)
    {
        Get("/", context => Assets.Write(context.Response, null));
        Get("/page/{name}", context => Assets.Write(context.Response, (string?)context.Request.RouteValues["name"]));
        Get("/live", Live);
        Get("/link", Link);
        Get("/materials", FindMaterials);
        Get("/radios", context => Json(context, FoundRadios()));
        Get("/export/{what}", Export);
        PostJson("/changes", PageJson.Default.ChangeRequest, request => Changed(Tried.Do(request.Changes)));
        Post("/undo", () => Changed(Tried.Undo()));
        Post("/redo", () => Changed(Tried.Redo()));
        PostJson("/recover", PageJson.Default.RecoverRequest, request => Recovered(Tried.Recover(request.GoOn)));
        PostJson("/jobs", PageJson.Default.JobRequest, request =>
        {
            services.Jobs.Start(request.Job, request.Spot);
            return new Answer(true, "");
        });
        Post("/jobs/stop", () =>
        {
            services.Jobs.Stop();
            return new Answer(true, "");
        });
        PostJson("/save", PageJson.Default.SaveRequest, request => new Saving(Tried).Save(request.Name));
        Post("/end", () =>
        {
            end();
            return new Answer(true, "LinkMargin is stopping. You can close this page.");
        });

        void Get(string path, RequestDelegate answer) => app.MapGet(path, context => Guarded(context, () => answer(context)));

        void Post(string path, Func<Answer> answer) => app.MapPost(path, context => Guarded(context, () => Json(context, answer())));

        void PostJson<T>(string path, JsonTypeInfo<T> type, Func<T, Answer> answer) =>
            app.MapPost(path, context => Guarded(context, async () => await Json(context, answer(await Read(context, type)))));
    }

    private static async Task<T> Read<T>(HttpContext context, JsonTypeInfo<T> type)
    {
        if (!context.Request.HasJsonContentType())
        {
            throw new CannotBeDoneException("this request is not JSON");
        }

        return await JsonSerializer.DeserializeAsync(context.Request.Body, type, context.RequestAborted)
            ?? throw new CannotBeDoneException("this request is empty");
    }

    // Each kind of error has its own status; the answer is never more than a sentence.
    private static async Task Guarded(HttpContext context, Func<Task> answer)
    {
        try
        {
            await answer();
        }
        catch (EditFaultException fault)
        {
            await Fault(context, StatusCodes.Status400BadRequest, $"This change {fault.Message}.");
        }
        catch (CannotBeDoneException fault)
        {
            await Fault(context, StatusCodes.Status400BadRequest, fault.Message);
        }
        catch (Exception fault) when (fault is JsonException or BadHttpRequestException)
        {
            await Fault(context, StatusCodes.Status400BadRequest, "This request cannot be read.");
        }
        catch (FileProblemException fault)
        {
            await Fault(context, StatusCodes.Status409Conflict, fault.Message);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // The client no longer waits for the answer.
        }
        catch (Exception fault) when (!context.Response.HasStarted)
        {
            await Fault(context, StatusCodes.Status500InternalServerError, $"Unexpected error: {fault.GetType().Name}: {Quote.Sentence(fault.Message)}; this is a bug in the program, please report it.");
        }
    }

    private static Task Fault(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        return Json(context, new Answer(false, Quote.Sentence(sentence)));
    }

    private static async Task Json(HttpContext context, object message)
    {
        byte[] bytes = PageJson.Bytes(message);
        context.Response.ContentType = "application/json; charset=utf-8";
        context.Response.ContentLength = bytes.Length;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
    }

    private static Answer Changed(HouseState state) => new(true, "") { Version = state.Version };

    private Answer Recovered(IReadOnlyList<string> unfit) => new(true, unfit.Count == 0 ? "" : "Some changes no longer fit the house file and were left out.")
    {
        Version = Tried.Current.Version,
        Lines = unfit,
    };

    private async Task Live(HttpContext context)
    {
        if (!context.WebSockets.IsWebSocketRequest)
        {
            await Refusal.Write(context.Response, StatusCodes.Status400BadRequest, "This address is for the page's own connection.");
            return;
        }

        using WebSocket socket = await context.WebSockets.AcceptWebSocketAsync();
        using var page = new LivePage(new PageSocket(socket), services);
        await page.Run(stopping);
    }

    private async Task Link(HttpContext context)
    {
        HouseState state = Tried.Current;
        House house = state.Now.House;
        string? spotName = context.Request.Query["spot"], seatName = context.Request.Query["seat"];
        Spot spot = house.Spots.FirstOrDefault(one => one.Name == spotName) ?? throw new CannotBeDoneException($"there is no spot {Quote.Of(spotName ?? "")}");
        Seat seat = house.Seats.FirstOrDefault(one => one.Name == seatName) ?? throw new CannotBeDoneException($"there is no seat {Quote.Of(seatName ?? "")}");
        await Json(context, LinkAnswers.Of(state, services.Models.For(house, state.Occupied), services.Confidence, spot, seat));
    }

    private Task FindMaterials(HttpContext context)
    {
        MaterialTables tables = Tried.Source.Tables;
        string words = context.Request.Query["words"].ToString();
        FoundRows found = new(
        [
            .. (words.Length == 0
                    ? tables.Materials.Values.Select(row => new FoundRow(row.Name, tables.KindOf(row.Name), row.Description))
                    : new RowSearch(tables).Find(words).Where(row => tables.Materials.ContainsKey(row.Name)))
                .Take(words.Length == 0 ? int.MaxValue : MostFound)
                .Select(row => new FoundMaterial(row.Name, row.Kind, row.What)),
        ]);
        return Json(context, found);
    }

    private FoundRows FoundRadios() =>
        new([.. Tried.Source.Tables.Radios.Values.Select(radio => new FoundMaterial(radio.Name, MaterialTables.AllRadios, radio.Description))]);

    private async Task Export(HttpContext context)
    {
        ExportedFile file = await new Exporting(services).Make(
            (string?)context.Request.RouteValues["what"] ?? "", context.Request.Query["spot"].ToString(), context.Request.Query["layer"] == "median", context.RequestAborted);
        context.Response.ContentType = file.Type;
        context.Response.ContentLength = file.Bytes.Length;
        context.Response.Headers.ContentDisposition = $"attachment; filename=\"{file.Name}\"";
        await context.Response.Body.WriteAsync(file.Bytes, context.RequestAborted);
    }
}
