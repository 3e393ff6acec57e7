using LinkMargin.Cli.Guide;

namespace LinkMargin.Cli.Tests.Guide;

public sealed class MarkdownTextTests
{
    [Fact]
    public void Each_kind_of_block_is_laid_out_as_text()
    {
        const string Markdown =
            """
            # A *title*

            <!-- a remark -->
            Two lines of **one**
            paragraph with `a key` and [a link](other.md).

            ## Smaller

            * first
              item
            * `--json` second

            1. one

            | key | meaning |
            |---|---|
            | `open` | `a` \| `b` |

            ```text
              as it stands   here
            ```

                a command
            """;
        const string Text =
            """
            A title
            =======

            Two lines of one paragraph with 'a key'
            and a link.

            Smaller
            -------

            * first item
            * --json second

            1. one

            key   meaning
            ---------------
            open  'a' | 'b'

                  as it stands   here

                a command

            """;
        Assert.Equal(Text, Written(Markdown, 40));
    }

    [Fact]
    public void Code_is_drawn_in_only_where_it_fits()
    {
        string code = new('x', 38);
        Assert.Equal($"{code}\n", Written($"```\n{code}\n```\n", 40));
        Assert.Equal($"    {code}\n", Written($"```\n{code}\n```\n", 42));
    }

    private static string Written(string markdown, int width)
    {
        StringWriter output = new() { NewLine = "\n" };
        MarkdownText.Write(markdown, output, width);
        return output.ToString();
    }
}
