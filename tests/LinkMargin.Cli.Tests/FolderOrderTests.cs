using Mono.Cecil;
using Mono.Cecil.Cil;

namespace LinkMargin.Cli.Tests;

/// <summary>
/// Folders of a project depend on each other in the order of <c>src/folders.txt</c>, by what the built assemblies refer to. What is
/// inlined when a project is built (constants) leaves no trace and is not seen.
/// </summary>
public sealed class FolderOrderTests
{
    private static readonly Lazy<Dictionary<string, string[]>> Order = new(ReadOrder);

    public static TheoryData<string> Projects => [.. Order.Value.Keys];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_folder_uses_only_folders_below_it(string project)
    {
        string[] order = Order.Value[project];
        string[] backwards =
        [
            .. Uses(project)
                .Where(use => Array.IndexOf(order, use.Used) > Array.IndexOf(order, use.User))
                .Select(use => $"{use.User} uses {use.Used}: {use.By} uses {use.Type}")
                .Distinct().Order(StringComparer.Ordinal),
        ];
        Assert.True(backwards.Length == 0, string.Join('\n', backwards));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Every_folder_with_code_stands_in_the_order_and_no_other(string project)
    {
        using ModuleDefinition module = Open(project);
        string[] folders = [.. module.GetTypes().Select(FolderOf).OfType<string>().Where(folder => folder.Length > 0).Distinct().Order(StringComparer.Ordinal)];
        Assert.Equal(Order.Value[project].Where(folder => folder.Length > 0).Order(StringComparer.Ordinal), folders);
    }

    [Fact]
    public void A_use_against_the_order_is_seen()
    {
        // Links uses Paths; with the two swapped that is backwards.
        Assert.Contains(Uses("LinkMargin.Engine"), use => (use.User, use.Used) == ("Links", "Paths"));
        Assert.Contains(Uses("LinkMargin.Engine"), use => (use.User, use.Used) == ("Links", "Quantities"));
    }

    [Fact]
    public void Projects_refer_only_to_projects_above_them_in_the_list()
    {
        string[] projects = [.. Order.Value.Keys];
        foreach (string project in projects)
        {
            using ModuleDefinition module = Open(project);
            Assert.All(
                module.AssemblyReferences.Select(reference => reference.Name).Where(projects.Contains),
                used => Assert.True(Array.IndexOf(projects, used) < Array.IndexOf(projects, project), $"{project} uses {used}"));
        }
    }

    private static ModuleDefinition Open(string project) =>
        ModuleDefinition.ReadModule(Path.Combine(AppContext.BaseDirectory, $"{project}.dll"));

    private static List<(string User, string Used, string By, string Type)> Uses(string project)
    {
        using ModuleDefinition module = Open(project);
        List<(string User, string Used, string By, string Type)> uses = [];
        foreach (TypeDefinition type in module.GetTypes())
        {
            if (FolderOf(type) is not { } user)
            {
                continue;
            }

            foreach (TypeReference used in TypesUsedBy(type).SelectMany(Parts))
            {
                if (used.Scope == module && FolderOf(used) is { } folder && folder != user)
                {
                    uses.Add((user, folder, type.FullName, used.FullName));
                }
            }
        }

        return uses;
    }

    private static IEnumerable<TypeReference?> TypesUsedBy(TypeDefinition type) =>
    [
        type.BaseType,
        .. type.Interfaces.Select(one => one.InterfaceType),
        .. type.Fields.Select(field => field.FieldType),
        .. type.CustomAttributes.Select(attribute => attribute.AttributeType),
        .. type.GenericParameters.SelectMany(one => one.Constraints).Select(one => one.ConstraintType),
        .. type.Methods.SelectMany(TypesUsedBy),
    ];

    private static IEnumerable<TypeReference?> TypesUsedBy(MethodDefinition method) =>
    [
        method.ReturnType,
        .. method.Parameters.Select(parameter => parameter.ParameterType),
        .. method.GenericParameters.SelectMany(one => one.Constraints).Select(one => one.ConstraintType),
        .. method.HasBody ? method.Body.Variables.Select(variable => variable.VariableType) : [],
        .. method.HasBody ? method.Body.Instructions.SelectMany(TypesUsedBy) : [],
    ];

    private static IEnumerable<TypeReference?> TypesUsedBy(Instruction instruction) => instruction.Operand switch
    {
        TypeReference type => [type],
        FieldReference field => [field.DeclaringType, field.FieldType],
        GenericInstanceMethod method => [method.DeclaringType, method.ReturnType, .. method.Parameters.Select(p => p.ParameterType), .. method.GenericArguments],
        MethodReference method => [method.DeclaringType, method.ReturnType, .. method.Parameters.Select(p => p.ParameterType)],
        _ => [],
    };

    // A list of a type uses the type; so does an array of it, a reference to it, or a pair with it.
    private static IEnumerable<TypeReference> Parts(TypeReference? type) => type switch
    {
        null or GenericParameter => [],
        GenericInstanceType generic => [generic.ElementType, .. generic.GenericArguments.SelectMany(Parts)],
        IModifierType modified => Parts(modified.ElementType),
        TypeSpecification specification => Parts(specification.ElementType),
        _ => [type],
    };

    // The namespace below the project's is the folder; null for what a compiler made outside of all.
    private static string? FolderOf(TypeReference type)
    {
        TypeReference outer = type;
        while (outer.DeclaringType is { } declaring)
        {
            outer = declaring;
        }

        string[] words = outer.Namespace.Split('.');
        return words is ["LinkMargin", not "Shared", ..] ? string.Join('/', words.Skip(2)) : null;
    }

    // The root of a project stands above all its folders.
    private static Dictionary<string, string[]> ReadOrder()
    {
        Dictionary<string, List<string>> order = [];
        List<string> folders = [];
        foreach (string line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "folders.txt")).Where(line => line.Length > 0 && line[0] != '#'))
        {
            if (line[0] == ' ')
            {
                folders.Add(line.Trim());
            }
            else
            {
                order.Add(line, folders = []);
            }
        }

        return order.ToDictionary(one => one.Key, one => (string[])[.. one.Value, ""]);
    }
}
