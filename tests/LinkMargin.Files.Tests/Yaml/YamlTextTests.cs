using System.Text;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tests.Yaml;

public sealed class YamlTextTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("linkmargin-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_missing_file_is_said_to_be_missing() =>
        Assert.Equal("there is no such file; check the name and the folder", Fault(Path.Combine(folder, "none.yaml")));

    [Fact]
    public void A_folder_is_said_to_be_a_folder() => Assert.Equal("this is a folder; name a file in it", Fault(folder));

    [Theory]
    [InlineData("")]
    [InlineData("a\0b")]
    public void A_name_that_cannot_be_a_file_gets_a_sentence(string name) =>
        Assert.StartsWith("this file cannot be read: ", Fault(name), StringComparison.Ordinal);

    [Fact]
    public void A_file_without_permission_is_said_to_be_so()
    {
        // The superuser may read everything, so there the question cannot be asked of the file system.
        if (OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess)
        {
            return;
        }

        string path = Write("x: 1"u8);
        File.SetUnixFileMode(path, UnixFileMode.None);
        Assert.Equal("there is no permission to read this file", Fault(path));
    }

    [Fact]
    public void A_file_may_be_as_large_as_the_limit_and_no_larger()
    {
        string path = Path.Combine(folder, "large.yaml");
        SetLength(path, YamlLimits.Bytes + 1);
        Assert.StartsWith("this file is larger than 4 MB", Fault(path), StringComparison.Ordinal);
        byte[] blanks = new byte[YamlLimits.Bytes];
        Array.Fill(blanks, (byte)' ');
        File.WriteAllBytes(path, blanks);
        Assert.Null(Fault(path));
    }

    [Fact]
    public void A_file_of_fifty_megabytes_is_refused()
    {
        string path = Path.Combine(folder, "fifty.yaml");
        SetLength(path, 50L * 1024 * 1024);
        Assert.StartsWith("this file is larger than 4 MB", Fault(path), StringComparison.Ordinal);
    }

    [Fact]
    public void A_device_that_never_ends_is_refused()
    {
        if (File.Exists("/dev/zero"))
        {
            Assert.StartsWith("this file is larger than 4 MB", Fault("/dev/zero"), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_byte_that_is_not_utf8_is_reported_with_its_place()
    {
        List<Problem> problems = [];
        Assert.Null(YamlText.Read(Write([.. "a: 1\nb: ü"u8, 0xE9, .. " x"u8]), new Source("f", problems)));
        Assert.Equal(new Mark(2, 5), Assert.Single(problems).Mark);
        Assert.Contains("not UTF-8", problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Utf16_is_named() => Assert.Contains("UTF-16", Fault(Write(Encoding.Unicode.GetPreamble())), StringComparison.Ordinal);

    private static string? Fault(string path)
    {
        List<Problem> problems = [];
        string? text = YamlText.Read(path, new Source(path, problems));
        Assert.Equal(text is null, problems.Count == 1);
        return problems.SingleOrDefault()?.Message;
    }

    private static void SetLength(string path, long length)
    {
        using FileStream stream = File.Create(path);
        stream.SetLength(length);
    }

    private string Write(ReadOnlySpan<byte> bytes)
    {
        string path = Path.Combine(folder, "file.yaml");
        File.WriteAllBytes(path, bytes);
        return path;
    }
}
