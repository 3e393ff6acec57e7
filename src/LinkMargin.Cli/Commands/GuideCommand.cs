using System.CommandLine;
using LinkMargin.Cli.Completion;
using LinkMargin.Cli.Guide;
using LinkMargin.Cli.Invoking;
using LinkMargin.Cli.Options;
using LinkMargin.Files.Json;
using LinkMargin.Files.Problems;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Cli.Commands;

/// <summary>The user's guide: its topics, or one of them.</summary>
internal static class GuideCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Create(Invocation invocation, CommonOptions common)
    {
        string[] names = [.. GuideTopic.All.Select(topic => topic.Name)];
        Argument<string?> name = new("TOPIC")
        {
            Description = $"one of the topics {string.Join(", ", names)}; without it, they are listed",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<bool> man = CommonOptions.Flag("--man", "Print a manual page (roff) made of the help of all commands.");
        var command = new Command("guide", "The user's guide, one topic at a time; on a terminal, shown by the program that PAGER names." + ExitCodes.Of()) { name, man };
        command.SetAction(parse =>
        {
            string? wanted = parse.GetValue(name);
            if (parse.GetValue(man))
            {
                if (wanted is not null || parse.GetValue(common.Json))
                {
                    throw new CannotBeDoneException($"{man.Name} prints one page of all commands; omit the topic and --json");
                }

                invocation.Output.Write(ManPage.Of((RootCommand)parse.RootCommandResult.Command, typeof(GuideCommand).Assembly.GetName().Version!.ToString(fieldCount: 3)));
                return ExitCodes.Done;
            }

            GuideTopic? topic = wanted is null ? null : GuideTopic.All.FirstOrDefault(known => known.Name == wanted)
                ?? throw new CannotBeDoneException($"the guide has no topic {Quote.Of(wanted)}; {NearestWord.Advice(wanted, names)}");
            if (parse.GetValue(common.Json))
            {
                invocation.Output.WriteLine(JsonText.Of(DocumentOf(topic)));
            }
            else if (topic is null)
            {
                WriteTopics(invocation.Output, invocation.Width);
            }
            else
            {
                Show(topic, invocation);
            }

            return ExitCodes.Done;
        });
        return command;
    }

    private static GuideDocument DocumentOf(GuideTopic? topic) => new(
        topic is null
            ? [.. GuideTopic.All.Select(known => new GuideTopicDocument(known.Name, known.About, null))]
            : [new GuideTopicDocument(topic.Name, topic.About, topic.Markdown())]);

    private static void WriteTopics(TextWriter output, int width)
    {
        TextTable table = new([new("topic"), new("explains") { Wraps = true }]);
        foreach (GuideTopic topic in GuideTopic.All)
        {
            table.Add(topic.Name, topic.About);
        }

        table.WriteTo(output, width);
        output.WriteLine();
        WordWrap.Write("'linkmargin guide TOPIC' prints a topic; 'linkmargin COMMAND --help' lists the options of a command.", output, width);
    }

    private static void Show(GuideTopic topic, Invocation invocation)
    {
        StringWriter text = new() { NewLine = invocation.Output.NewLine };
        MarkdownText.Write(topic.Markdown(), text, invocation.Width);
        if (invocation.Pager?.Show(text.ToString()) != true)
        {
            invocation.Output.Write(text.ToString());
        }
    }
}
