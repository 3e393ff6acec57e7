using LinkMargin.Cli.Invoking;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Cli.Tests.Invoking;

public sealed class ProgressBarTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Work_that_takes_but_a_moment_is_done_once_and_shows_nothing(bool isTerminal)
    {
        var error = new StringWriter();
        int done = 0;

        ProgressBar.While(Watched(error, isTerminal), "work", new Progress(1), () => done++);

        Assert.Equal(1, done);
        Assert.Empty(error.ToString());
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_the_work_throws_arrives_as_it_was_thrown(bool isTerminal) => Assert.Throws<CannotBeDoneException>(() =>
        ProgressBar.While(Watched(new StringWriter(), isTerminal), "work", new Progress(1), () => throw new CannotBeDoneException("no")));

    [Fact]
    public void The_share_done_runs_from_nothing_to_all()
    {
        var progress = new Progress(4);

        Assert.Equal(0, progress.Share);
        progress.Advance();
        Assert.Equal(0.25, progress.Share);
        progress.Advance(9);
        Assert.Equal(1, progress.Share);
    }

    private static Invocation Watched(TextWriter error, bool isTerminal) =>
        new(new StringWriter(), error, "") { ErrorIsTerminal = isTerminal };
}
