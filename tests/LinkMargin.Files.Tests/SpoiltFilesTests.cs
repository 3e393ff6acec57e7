using LinkMargin.Benchmarks.Mutations;

namespace LinkMargin.Files.Tests;

/// <summary>A few hundred spoilt files of each kind; DEVELOPERS.md has the command for a hundred thousand.</summary>
public sealed class SpoiltFilesTests
{
    private const int Count = 300;

    [Theory]
    [InlineData("house")]
    [InlineData("readings")]
    [InlineData("tables")]
    [InlineData("fitted")]
    public void No_spoilt_file_crashes_its_reader(string kind)
    {
        MutationTarget target = MutationTarget.All.Single(t => t.Name == kind);
        int refused = 0;
        for (int seed = 1; seed <= Count; seed++)
        {
            (byte[] bytes, int example) = target.Spoilt(seed);
            refused += target.ReadBytes(bytes, example) > 0 ? 1 : 0;
        }

        // Some mutations change a value to another good one; most do not.
        Assert.InRange(refused, Count / 4, Count - 1);
    }

    [Fact]
    public void The_examples_themselves_have_no_mistake()
    {
        foreach (MutationTarget target in MutationTarget.All)
        {
            Assert.All(target.Valid.Select((bytes, i) => (bytes, i)), v => Assert.InRange(target.ReadBytes(v.bytes, v.i), 0, 2));
        }
    }
}
