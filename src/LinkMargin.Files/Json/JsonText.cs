using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace LinkMargin.Files.Json;

/// <summary>Writes the documents that scripts read. Keys carry their unit; a number that is not finite is refused.</summary>
public static class JsonText
{
    // Names are shown as people wrote them; the text goes to a file or a pipe, not into a page.
    private static readonly JsonDocuments Documents = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
        NewLine = "\n",
        Converters = { new PlainZero() },
    });

    /// <summary>One document as text, without a line end behind it.</summary>
    /// <typeparam name="T">One of this folder's documents.</typeparam>
    public static string Of<T>(T document)
        where T : class =>
        JsonSerializer.Serialize(
            document,
            Documents.GetTypeInfo(typeof(T)) as JsonTypeInfo<T>
                ?? throw new ArgumentException($"{typeof(T).Name} is not listed among the documents.", nameof(document)));

    // A zero has no sign: what is 0 after rounding or a difference is not told as −0.
    private sealed class PlainZero : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(value == 0 ? 0 : value);
    }
}
