using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Measurements;

/// <summary>What sent and what received. Case does not matter.</summary>
/// <param name="Sender">What sent; empty where the file does not say.</param>
/// <param name="Device">What received; empty where the file does not say.</param>
internal sealed record DevicePair(string Sender, string Device)
{
    private const string Between = " to ";

    /// <summary>Most letters of a pair's name.</summary>
    public static readonly int LongestName = (2 * ValueReader.LongestName) + Between.Length;

    /// <summary>What the pair is called.</summary>
    public string Name => (Sender.Length, Device.Length) switch
    {
        (0, 0) => "device",
        (0, _) => Device,
        (_, 0) => Sender,
        _ => Sender + Between + Device,
    };

    /// <inheritdoc/>
    public bool Equals(DevicePair? other) => other is not null && Name.Equals(other.Name, StringComparison.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.OrdinalIgnoreCase.GetHashCode(Name);
}
