using System.Security.Cryptography;
using System.Text;

namespace LinkMargin.Web.Serving;

/// <summary>
/// Who may use the page. Each address has a token that admits one browser, once, so a token that is later found in a command line,
/// a history or a referrer is worthless. An admitted browser has a key in a cookie from then on.
/// </summary>
internal sealed class Admission
{
    private const int Bytes = 32;

    private readonly Lock gate = new();
    private readonly List<byte[]> tokens = [];
    private readonly byte[] key = Fresh();

    /// <summary>Makes a token for one more browser.</summary>
    public string NewToken()
    {
        byte[] token = Fresh();
        lock (gate)
        {
            tokens.Add(token);
        }

        return Encoding.ASCII.GetString(token);
    }

    /// <summary>The key that admitted browsers send with each request.</summary>
    public string Key => Encoding.ASCII.GetString(key);

    /// <summary>Uses up a token.</summary>
    /// <returns>Whether it was a valid token that had not been used.</returns>
    public bool Redeem(string? token)
    {
        byte[] given = Encoding.UTF8.GetBytes(token ?? "");
        lock (gate)
        {
            // Every token is compared, so that the time taken reveals nothing.
            byte[]? found = null;
            foreach (byte[] one in tokens)
            {
                found = CryptographicOperations.FixedTimeEquals(one, given) ? one : found;
            }

            return found is not null && tokens.Remove(found);
        }
    }

    /// <summary>Whether a cookie's value is the key.</summary>
    public bool IsKey(string? value) => CryptographicOperations.FixedTimeEquals(key, Encoding.UTF8.GetBytes(value ?? ""));

    private static byte[] Fresh() => Encoding.ASCII.GetBytes(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes)));
}
