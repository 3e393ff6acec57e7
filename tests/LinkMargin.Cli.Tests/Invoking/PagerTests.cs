using LinkMargin.Cli.Invoking;

namespace LinkMargin.Cli.Tests.Invoking;

public sealed class PagerTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [UnixTheory]
    [InlineData("cat > '{0}'", "a text\n")]
    [InlineData("head -c 3 > '{0}'", "a t")]
    public void A_pager_gets_the_text_through_the_shell(string command, string seen)
    {
        string file = Path.Combine(folder.Path, "seen.txt");
        Pager pager = new(string.Format(System.Globalization.CultureInfo.InvariantCulture, command, file));
        Assert.True(pager.Show("a text\n"));
        Assert.Equal(seen, File.ReadAllText(file));
        Assert.False(pager.IsOpen);
    }

    [UnixTheory]
    [InlineData("true")]
    public void A_pager_that_is_left_before_the_end_is_no_fault(string command) => Assert.True(new Pager(command).Show(new string('x', 1_000_000)));

    [UnixTheory]
    [InlineData("no-such-pager-here 2>/dev/null")]
    public void Without_a_pager_the_text_is_for_the_caller_to_write(string command) => Assert.False(new Pager(command).Show("a text\n"));

    /// <summary>As always in a test, whose output is no terminal.</summary>
    [Fact]
    public void What_is_redirected_is_not_paged() => Assert.True(!Console.IsOutputRedirected || Pager.OfUser() is null);
}
