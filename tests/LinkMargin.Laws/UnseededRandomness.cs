using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace LinkMargin.Laws;

/// <summary>Calls that make two runs of the same tests differ, found in what a built test assembly refers to.</summary>
public static class UnseededRandomness
{
    private static readonly (string Type, string Member)[] Forbidden =
    [
        ("CsCheck.Check", "Sample*"), // fresh cases in each run
        ("CsCheck.Check", "Faster*"), // and times
        ("CsCheck.Check", "Single"),
        ("CsCheck.PCG", "get_ThreadPCG"),
        ("System.Random", "get_Shared"),
        ("System.Guid", "NewGuid"),
        ("System.Guid", "CreateVersion7"),
        ("System.DateTime", "get_Now"),
        ("System.DateTime", "get_UtcNow"),
        ("System.DateTime", "get_Today"),
        ("System.DateTimeOffset", "get_Now"),
        ("System.DateTimeOffset", "get_UtcNow"),
        ("System.TimeProvider", "get_System"),
        ("System.IO.Path", "GetRandomFileName"),
        ("System.HashCode", "*"), // seeded afresh in each process
        ("System.Security.Cryptography.RandomNumberGenerator", "*"),
        ("MathNet.Numerics.Random.SystemRandomSource", "get_Default"),
        ("MathNet.Numerics.Random.SystemRandomSource", "Doubles"),
        ("MathNet.Numerics.Random.RandomSeed", "*"),
    ];

    // By name, with the number of arguments of the form that takes no source of randomness.
    private static readonly (string Type, string Member, int Arguments)[] ForbiddenForms =
    [
        ("System.Random", ".ctor", 0),
        ("MathNet.Numerics.Distributions.Normal", "Sample", 2),
        ("MathNet.Numerics.Distributions.Exponential", "Sample", 1),
        ("MathNet.Numerics.Distributions.Normal", "Samples", 2),
    ];

    /// <summary>The forbidden members that an assembly refers to, each once.</summary>
    public static IReadOnlyList<string> In(Assembly assembly)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        using FileStream file = File.OpenRead(assembly.Location);
        using var image = new PEReader(file);
        MetadataReader reader = image.GetMetadataReader();
        SortedSet<string> found = new(StringComparer.Ordinal);
        foreach (MemberReferenceHandle handle in reader.MemberReferences)
        {
            MemberReference reference = reader.GetMemberReference(handle);
            if (reference.Parent.Kind != HandleKind.TypeReference || reference.GetKind() != MemberReferenceKind.Method)
            {
                continue;
            }

            TypeReference owner = reader.GetTypeReference((TypeReferenceHandle)reference.Parent);
            string type = $"{reader.GetString(owner.Namespace)}.{reader.GetString(owner.Name)}", member = reader.GetString(reference.Name);
            int arguments = ArgumentsOf(reader.GetBlobReader(reference.Signature));
            if (IsForbidden(type, member, arguments))
            {
                found.Add($"{type}.{member}");
            }
        }

        return [.. found];
    }

    /// <summary>Whether a member draws from a source that has no seed.</summary>
    /// <param name="type">The full name of its type.</param>
    /// <param name="member">Its name.</param>
    /// <param name="arguments">How many it takes, an instance not counted.</param>
    public static bool IsForbidden(string type, string member, int arguments) =>
        Forbidden.Any(f => f.Type == type && Matches(f.Member, member)) || ForbiddenForms.Contains((type, member, arguments));

    private static bool Matches(string pattern, string member) =>
        pattern.EndsWith('*') ? member.StartsWith(pattern[..^1], StringComparison.Ordinal) : member == pattern;

    // ECMA-335, II.23.2.1: after the header and, of a generic method, the number of its type parameters.
    private static int ArgumentsOf(BlobReader signature)
    {
        SignatureHeader header = signature.ReadSignatureHeader();
        if (header.IsGeneric)
        {
            signature.ReadCompressedInteger();
        }

        return signature.ReadCompressedInteger();
    }
}
