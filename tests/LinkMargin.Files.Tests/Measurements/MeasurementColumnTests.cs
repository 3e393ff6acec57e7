using System.Text.RegularExpressions;
using LinkMargin.Files.Measurements;

namespace LinkMargin.Files.Tests.Measurements;

public sealed partial class MeasurementColumnTests
{
    [Fact]
    public void The_guide_lists_the_columns_and_no_others()
    {
        string[] guide = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "documents", "measuring.md"));
        IEnumerable<string> table = guide.SkipWhile(line => line != "| column | content |").TakeWhile(line => line.StartsWith('|'));
        string[] listed = [.. table.SelectMany(row => Code().Matches(row.Split('|')[1]).Select(code => code.Groups[1].Value))];
        Assert.Equal(MeasurementColumn.All.Select(column => column.Heading).Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Code();
}
