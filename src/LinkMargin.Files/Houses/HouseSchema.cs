using LinkMargin.Files.Resources;

namespace LinkMargin.Files.Houses;

/// <summary>The JSON Schema of the house file (draft 2020-12), for editors that complete and underline.</summary>
public static class HouseSchema
{
    /// <summary>The name the starter house's first line looks for beside it.</summary>
    public const string FileName = "house.schema.json";

    /// <summary>The schema.</summary>
    public static string Text => EmbeddedText.Read("houses/house.schema.json");
}
