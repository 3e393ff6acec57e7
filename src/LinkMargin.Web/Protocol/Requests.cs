using System.Text.Json;
using System.Text.Json.Serialization;
using LinkMargin.Files.Changes;

namespace LinkMargin.Web.Protocol;

/// <summary>What a page wants to see: sent on every change, many times a second while the user drags.</summary>
internal sealed record WatchRequest
{
    /// <summary><c>watch</c>, or <c>painted</c> to confirm a map that is on the screen.</summary>
    public string Type { get; init; } = "";

    /// <summary>The number of the request.</summary>
    public int Generation { get; init; }

    /// <summary>The spot that is shown.</summary>
    public string? Spot { get; init; }

    /// <summary>A change that is only previewed, as while dragging; null for none.</summary>
    public HouseChange? Preview { get; init; }
}

/// <summary>Changes to make as one step.</summary>
internal sealed record ChangeRequest
{
    public IReadOnlyList<HouseChange> Changes { get; init; } = [];
}

/// <summary>Work to start in the background.</summary>
internal sealed record JobRequest
{
    /// <summary><c>place</c> or <c>improve</c>.</summary>
    public string Job { get; init; } = "";

    /// <summary>The spot it is about.</summary>
    public string Spot { get; init; } = "";
}

/// <summary>Where to save the changes.</summary>
internal sealed record SaveRequest
{
    /// <summary>A file name in the folder of the house file; empty for the house file itself.</summary>
    public string Name { get; init; } = "";
}

/// <summary>Whether to recover the steps of an earlier page.</summary>
internal sealed record RecoverRequest
{
    public bool GoOn { get; init; }
}

/// <summary>Table rows found by a search.</summary>
internal sealed record FoundRows(IReadOnlyList<FoundMaterial> Rows);

/// <summary>A row of the tables.</summary>
internal sealed record FoundMaterial(string Name, string Kind, string What);

/// <summary>All messages as JSON, source-generated for ahead-of-time compilation; the first test finds a type that is missing here.</summary>
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
    /// <summary>A message in the form sent to the page.</summary>
    public static byte[] Bytes(object message) => JsonSerializer.SerializeToUtf8Bytes(message, message.GetType(), Default);
}
