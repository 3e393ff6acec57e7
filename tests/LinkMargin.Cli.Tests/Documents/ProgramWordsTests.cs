using System.Text.RegularExpressions;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LinkMargin.Cli.Tests.Documents;

/// <summary>The program says nothing in replaced terms, by every text in the built assemblies and every file they carry.</summary>
public sealed class ProgramWordsTests
{
    // Names in files of older versions, which are still read.
    private static readonly string[] OfOlderFiles = ["readings", "reading", "bad-reading"];

    // Hardly any text has one of them, so all are looked for at once.
    private static readonly Regex AnyTerm = new($@"\b({string.Join('|', ReplacedTerms.All.Select(term => term.Old))})\b", RegexOptions.IgnoreCase | RegexOptions.Compiled);

    public static TheoryData<string> Assemblies => ["LinkMargin.Engine", "LinkMargin.Files", "LinkMargin.Plots", "LinkMargin.Reports", "LinkMargin.Web", "linkmargin"];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void No_text_of_the_program_has_a_replaced_term(string assembly)
    {
        using ModuleDefinition module = ModuleDefinition.ReadModule(Path.Combine(AppContext.BaseDirectory, $"{assembly}.dll"));
        string[] texts =
        [
            .. module.GetTypes().SelectMany(type => type.Methods).Where(method => method.HasBody)
                .SelectMany(method => method.Body.Instructions)
                .Where(instruction => instruction.OpCode == OpCodes.Ldstr)
                .Select(instruction => (string)instruction.Operand),
            .. module.Resources.OfType<EmbeddedResource>()
                .Where(resource => Path.GetExtension(resource.Name) is ".yaml" or ".json" or ".csv" or ".html" or ".js")
                .SelectMany(resource => System.Text.Encoding.UTF8.GetString(resource.GetResourceData()).Split('\n')),
        ];
        Assert.NotEmpty(texts);
        string[] found =
        [
            .. texts.Distinct().Except(OfOlderFiles).Where(text => AnyTerm.IsMatch(text)).SelectMany(text => ReplacedTerms.All
                .Where(term => Regex.IsMatch(text, $@"\b({term.Old})\b", RegexOptions.IgnoreCase))
                .Select(term => $"'{text.Trim()}': write '{term.Use}'")),
        ];
        Assert.True(found.Length == 0, string.Join('\n', found));
    }

    [Fact]
    public void No_key_of_a_document_is_a_replaced_term()
    {
        string[] keys = [.. Files.Json.JsonText.Forms.Keys.SelectMany(type => type.Assembly.GetTypes())
            .Where(type => type.Namespace == typeof(Files.Json.JsonText).Namespace && type.Name.EndsWith("Document", StringComparison.Ordinal)).Distinct()
            .SelectMany(type => type.GetProperties()).Select(property => property.Name).Distinct()];
        Assert.True(keys.Length > 100);
        Assert.All(keys, key => Assert.DoesNotMatch("(?i)doubt|reading|counted|deciding|\\bmeets|notmet|seatsmet|mistake|worst|toldapart|leftout|bend", key));
    }
}
