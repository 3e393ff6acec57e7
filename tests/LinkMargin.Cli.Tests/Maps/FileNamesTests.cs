using LinkMargin.Cli.Maps;

namespace LinkMargin.Cli.Tests.Maps;

public sealed class FileNamesTests
{
    [Theory]
    [InlineData("Den Rack", "den-rack")]
    [InlineData("  a/b\\c:d*?  ", "a-b-c-d")]
    [InlineData("../../etc", "etc")]
    [InlineData("\u00dcber dem Kamin", "\u00fcber-dem-kamin")]
    [InlineData("!!!", "unnamed")]
    public void A_name_becomes_letters_digits_and_hyphens(string name, string stem) => Assert.Equal(stem, FileNames.Stem(name));

    [Fact]
    public void Names_with_the_same_letters_get_files_of_their_own()
    {
        var names = new FileNames();

        Assert.Equal("den-rack", names.Unique("den rack"));
        Assert.Equal("den-rack-2", names.Unique("Den-Rack"));
        Assert.Equal("den-rack-3", names.Unique("den_rack"));
    }

    [Fact]
    public void A_very_long_name_still_makes_a_file_name() => Assert.InRange(FileNames.Stem(new string('x', 5000)).Length, 100, 120);

    [Fact]
    public void A_long_name_in_any_script_stays_within_what_a_file_system_takes() =>
        Assert.InRange(System.Text.Encoding.UTF8.GetByteCount(FileNames.Stem(new string('\u5bb6', 5000))), 100, 120);
}
