using System.Text.Json;
using System.Text.Json.Serialization;
using LinkMargin.Files.Changes;

namespace LinkMargin.Web.Protocol;

/// <summary>What a page wants to see: sent whenever that changes, many times a second while somebody drags.</summary>
internal sealed record WatchRequest
{
    /// <summary><c>watch</c>, or <c>painted</c> for a map that is on the screen.</summary>
    public string Type { get; init; } = "";

    /// <summary>Counts the page's requests.</summary>
    public int Generation { get; init; }

    /// <summary>The spot that is shown.</summary>
    public string? Spot { get; init; }

    /// <summary>A change that is only being tried, as while dragging; null for none.</summary>
    public HouseChange? Preview { get; init; }
}

/// <summary>Changes to make as one step.</summary>
internal sealed record ChangeRequest
{
    public IReadOnlyList<HouseChange> Changes { get; init; } = [];
}

/// <summary>Work to begin in the background.</summary>
internal sealed record JobRequest
{
    /// <summary><c>place</c> or <c>improve</c>.</summary>
    public string Job { get; init; } = "";

    /// <summary>The spot it is about.</summary>
    public string Spot { get; init; } = "";
}

/// <summary>Where to save what is tried.</summary>
internal sealed record SaveRequest
{
    /// <summary>A file name in the folder of the house file; empty for the house file itself.</summary>
    public string Name { get; init; } = "";
}

/// <summary>Whether to go on from what was tried before.</summary>
internal sealed record RecoverRequest
{
    public bool GoOn { get; init; }
}

/// <summary>Rows of the tables that were looked for.</summary>
internal sealed record FoundRows(IReadOnlyList<FoundMaterial> Rows);

/// <summary>A row of the tables.</summary>
internal sealed record FoundMaterial(string Name, string Kind, string What);

/// <summary>All messages as JSON, for code that is compiled ahead: what is not listed here is found missing by the first test.</summary>
[JsonSerializable(typeof(HouseMessage))]
[JsonSerializable(typeof(ScaleMessage))]
[JsonSerializable(typeof(FiguresMessage))]
[JsonSerializable(typeof(ComparisonMessage))]
[JsonSerializable(typeof(CablesMessage))]
[JsonSerializable(typeof(ProgressMessage))]
[JsonSerializable(typeof(JobMessage))]
[JsonSerializable(typeof(NoticeMessage))]
[JsonSerializable(typeof(LinkAnswer))]
[JsonSerializable(typeof(Answer))]
[JsonSerializable(typeof(FoundRows))]
[JsonSerializable(typeof(WatchRequest))]
[JsonSerializable(typeof(ChangeRequest))]
[JsonSerializable(typeof(JobRequest))]
[JsonSerializable(typeof(SaveRequest))]
[JsonSerializable(typeof(RecoverRequest))]
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
internal sealed partial class PageJson : JsonSerializerContext
{
    /// <summary>A message as it goes to the page.</summary>
    public static byte[] Bytes(object message) => JsonSerializer.SerializeToUtf8Bytes(message, message.GetType(), Default);
}
