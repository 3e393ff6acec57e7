using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Tables;

/// <summary>Rows that could be meant for one another; which they are was chosen by hand from the table, as a builder would.</summary>
public sealed class RowAlternativesTests
{
    private static readonly MaterialTables Tables = MaterialTablesFile.ReadBuiltIn().Tables!;

    [Theory]
    [InlineData("brick-102-plastered", "concrete-150", "stone-450")] // five times as thick: nobody takes one for the other
    [InlineData("glass-double", "glass-coated", "glass-single")]
    [InlineData("drywall-stud", "plaster-metal-lath", "pugging-60")] // a filling of floors is no wall
    [InlineData("blockwork-140", "concrete-150", "metal-deck-130")]
    [InlineData("bath", "bath-acrylic", "sofa")]
    public void What_looks_alike_could_be_meant_and_what_does_not_could_not(string row, string meant, string notMeant)
    {
        string[] names = [.. RowAlternatives.Of(Tables, Tables.Materials[row]).Select(other => other.Name)];
        Assert.Contains(meant, names);
        Assert.DoesNotContain(notMeant, names);
        Assert.DoesNotContain(row, names);
    }

    [Fact]
    public void If_one_row_could_be_another_then_that_could_be_the_one() => Assert.All(
        Tables.Materials.Values,
        row => Assert.All(RowAlternatives.Of(Tables, row), other => Assert.Contains(row, RowAlternatives.Of(Tables, other))));

    [Fact]
    public void A_floor_on_joists_is_never_taken_for_a_slab()
    {
        string[] names = [.. RowAlternatives.Of(Tables, Tables.BuildUps["timber-joist-225"]).Select(other => other.Name)];
        Assert.Contains("timber-joist-225-heated", names);
        Assert.DoesNotContain("concrete-slab-200-screed", names);
        Assert.DoesNotContain("timber-joist-225", names);
    }

    [Fact]
    public void Things_that_anybody_can_tell_apart_have_no_alternative() => Assert.Empty(RowAlternatives.Of(Tables, Tables.Materials["bookcase"]));
}
