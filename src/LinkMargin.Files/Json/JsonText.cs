using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace LinkMargin.Files.Json;

/// <summary>
/// Writes the documents that scripts read. Each starts with its format and version. Keys carry their unit; a number that is not
/// finite is refused.
/// </summary>
public static class JsonText
{
    // Names are shown as people wrote them; the text goes to a file or a pipe, not into HTML.
    private static readonly JavaScriptEncoder Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;

    private static readonly JsonDocuments Documents = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = Encoder,
        Converters = { new PlainZero() },
    });

    private static readonly JsonWriterOptions Layout = new() { Indented = true, NewLine = "\n", Encoder = Encoder };

    /// <summary>The format of each document: program, document and version. Renaming a key or changing its meaning raises the version.</summary>
    public static IReadOnlyDictionary<Type, string> Forms { get; } = new Dictionary<Type, string>
    {
        [typeof(BudgetDocument)] = "linkmargin/explain/1",
        [typeof(ComparisonDocument)] = "linkmargin/compare/1",
        [typeof(TablesDocument)] = "linkmargin/materials/1",
        [typeof(MapsDocument)] = "linkmargin/map/1",
        [typeof(PathsDocument)] = "linkmargin/map-paths/1",
        [typeof(PlacesDocument)] = "linkmargin/place/1",
        [typeof(ImproveDocument)] = "linkmargin/improve/1",
        [typeof(CheckDocument)] = "linkmargin/check/1",
        [typeof(DemoDocument)] = "linkmargin/demo/1",
        [typeof(NewDocument)] = "linkmargin/new/1",
        [typeof(FitDocument)] = "linkmargin/fit/1",
        [typeof(TemplateDocument)] = "linkmargin/fit-template/1",
        [typeof(NextMeasurementsDocument)] = "linkmargin/fit-next/1",
        [typeof(GuideDocument)] = "linkmargin/guide/1",
        [typeof(RunsDocument)] = "linkmargin/runs/1",
        [typeof(ReportDocument)] = "linkmargin/report/1",
        [typeof(PageDocument)] = "linkmargin/page/1",
    };

    /// <summary>One document as text, without a line end.</summary>
    /// <typeparam name="T">One of this folder's documents.</typeparam>
    public static string Of<T>(T document)
        where T : class
    {
        if (!Forms.TryGetValue(typeof(T), out string? form) || Documents.GetTypeInfo(typeof(T)) is not JsonTypeInfo<T> type)
        {
            throw new ArgumentException($"{typeof(T).Name} is not listed among the documents.", nameof(document));
        }

        using JsonDocument content = JsonSerializer.SerializeToDocument(document, type);
        using MemoryStream bytes = new();
        using (var json = new Utf8JsonWriter(bytes, Layout))
        {
            json.WriteStartObject();
            json.WriteString("form", form);
            foreach (JsonProperty property in content.RootElement.EnumerateObject())
            {
                property.WriteTo(json);
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length);
    }

    // A zero has no sign: −0 from rounding or a difference is written as 0.
    private sealed class PlainZero : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(value == 0 ? 0 : value);
    }
}

/// <summary>The documents that are written; listed so that their serialisers are generated at build time.</summary>
[JsonSerializable(typeof(BudgetDocument))]
[JsonSerializable(typeof(ComparisonDocument))]
[JsonSerializable(typeof(TablesDocument))]
[JsonSerializable(typeof(MapsDocument))]
[JsonSerializable(typeof(PathsDocument))]
[JsonSerializable(typeof(PlacesDocument))]
[JsonSerializable(typeof(ImproveDocument))]
[JsonSerializable(typeof(CheckDocument))]
[JsonSerializable(typeof(DemoDocument))]
[JsonSerializable(typeof(NewDocument))]
[JsonSerializable(typeof(FitDocument))]
[JsonSerializable(typeof(TemplateDocument))]
[JsonSerializable(typeof(NextMeasurementsDocument))]
[JsonSerializable(typeof(GuideDocument))]
[JsonSerializable(typeof(RunsDocument))]
[JsonSerializable(typeof(ReportDocument))]
[JsonSerializable(typeof(PageDocument))]
internal sealed partial class JsonDocuments : JsonSerializerContext;
