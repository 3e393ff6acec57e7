using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace LinkMargin.Web.Serving;

/// <summary>
/// Checks every request first. A page of another site can make a browser send requests here, under another name for this machine
/// (DNS rebinding) or under its own; so each request must name exactly this host, come from exactly this origin, and carry the key.
/// </summary>
/// <param name="admission">Who may use the page.</param>
/// <param name="port">The port the server listens on.</param>
internal sealed class Guard(Admission admission, int port)
{
    /// <summary>The query key of the token in an address.</summary>
    public const string TokenKey = "token";

    private const string FetchSite = "Sec-Fetch-Site";

    private readonly string host = HostOf(port);

    /// <summary>The only valid host of the server.</summary>
    public static string HostOf(int port) => FormattableString.Invariant($"127.0.0.1:{port}");

    /// <summary>The only origin that requests may come from.</summary>
    public static string OriginOf(int port) => $"http://{HostOf(port)}";

    /// <summary>The name of the cookie. Cookies ignore ports, so the name includes the port.</summary>
    public static string CookieOf(int port) => FormattableString.Invariant($"linkmargin-{port}");

    /// <summary>Passes a request on, or refuses it.</summary>
    public async Task Pass(HttpContext context, RequestDelegate next)
    {
        HttpRequest request = context.Request;
        Headers.AddTo(context.Response, host);
        if (!IsOne(request.Headers.Host, host))
        {
            await Refusal.Write(context.Response, StatusCodes.Status421MisdirectedRequest, $"This server answers only to http://{host}.");
        }
        else if (!ComesFromHere(request))
        {
            await Refusal.Write(context.Response, StatusCodes.Status403Forbidden, "This request comes from another site, so it was refused.");
        }
        else if (IsReading(request) && request.Path == "/" && request.Query.ContainsKey(TokenKey))
        {
            await Admit(context);
        }
        else if (!admission.IsKey(request.Cookies[CookieOf(port)]))
        {
            await Refusal.Write(
                context.Response,
                StatusCodes.Status403Forbidden,
                "This browser has no access. Open the address that LinkMargin printed; each address works once. For a new one, press Enter in the window where LinkMargin runs.");
        }
        else
        {
            await next(context);
        }
    }

    private async Task Admit(HttpContext context)
    {
        bool isAdmitted = admission.Redeem(context.Request.Query[TokenKey]);

        // A browser that was admitted earlier may open its old address again.
        if (!isAdmitted && !admission.IsKey(context.Request.Cookies[CookieOf(port)]))
        {
            await Refusal.Write(
                context.Response,
                StatusCodes.Status403Forbidden,
                "This address has already been used, or is incomplete. For a new one, press Enter in the window where LinkMargin runs.");
            return;
        }

        context.Response.Cookies.Append(
            CookieOf(port),
            admission.Key,
            new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", IsEssential = true });
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = "/";
    }

    // Browsers send Origin with every request that could change something, and with every WebSocket. Read requests may lack it.
    private bool ComesFromHere(HttpRequest request)
    {
        StringValues origin = request.Headers.Origin, site = request.Headers[FetchSite];
        bool needsOrigin = !IsReading(request) || request.Headers.ContainsKey("Upgrade");
        return (origin.Count == 0 ? !needsOrigin : IsOne(origin, OriginOf(port)))
            && (site.Count == 0 || IsOne(site, "same-origin") || IsOne(site, "none"));
    }

    private static bool IsReading(HttpRequest request) => HttpMethods.IsGet(request.Method);

    private static bool IsOne(StringValues values, string expected) => values.Count == 1 && string.Equals(values[0], expected, StringComparison.Ordinal);
}

/// <summary>Security headers of every answer.</summary>
internal static class Headers
{
    /// <summary>Adds the headers.</summary>
    public static void AddTo(HttpResponse response, string host)
    {
        IHeaderDictionary headers = response.Headers;
        headers.ContentSecurityPolicy =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self' ws://" + host
            + "; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; trusted-types 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers.CacheControl = "no-store";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.XFrameOptions = "DENY";
    }
}

/// <summary>An error answer of one sentence.</summary>
internal static class Refusal
{
    /// <summary>Writes it as plain text.</summary>
    public static Task Write(HttpResponse response, int status, string sentence)
    {
        response.StatusCode = status;
        response.ContentType = "text/plain; charset=utf-8";
        return response.WriteAsync(sentence + "\n");
    }
}
