using System.Text.Json.Serialization;

namespace LinkMargin.Files.Json;

/// <summary>The documents that are written; listed so that the code that writes them is made when the program is built.</summary>
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
internal sealed partial class JsonDocuments : JsonSerializerContext;
