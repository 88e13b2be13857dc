using PressRun.JobFile.Results;

namespace PressRun.Cli;

/// <summary>What the program is asked to do.</summary>
internal enum Command
{
    /// <summary>Say how it is used.</summary>
    Help,

    /// <summary>Say which version it is.</summary>
    Version,

    /// <summary>Write a job file to start from.</summary>
    Sample,

    /// <summary>Write the JSON Schema of the job file.</summary>
    Schema,

    /// <summary>Answer a question about a job file.</summary>
    Ask,
}

/// <summary>The words of the command line, read.</summary>
/// <param name="Command">What is asked for.</param>
/// <param name="Question">Which question, where one is asked.</param>
/// <param name="File">The job file; <c>-</c> is standard input.</param>
/// <param name="AsTable">True for people, false for machines.</param>
/// <param name="Mistake">What is wrong with the words; null where nothing is.</param>
internal sealed record Arguments(Command Command, JobQuestion Question, string File, bool AsTable, string? Mistake)
{
    private static readonly (string Word, JobQuestion Question)[] Questions =
        [("estimate", JobQuestion.Estimate), ("ladder", JobQuestion.Ladder), ("impose", JobQuestion.Impose),
        ("compare", JobQuestion.Compare), ("reprint", JobQuestion.Reprint)];

    /// <summary>Reads the words; options may stand anywhere.</summary>
    public static Arguments Parse(string[] args)
    {
        var words = new List<string>();
        var asTable = false;
        foreach (var arg in args)
        {
            switch (arg)
            {
                case "--help" or "-h":
                    return Plain(Command.Help);
                case "--version":
                    return Plain(Command.Version);
                case "--table":
                    asTable = true;
                    break;
                case ['-', _, ..]:
                    return Wrong($"the option {arg} is not known; there are --table, --help and --version.");
                default:
                    words.Add(arg);
                    break;
            }
        }

        return words switch
        {
            [] or ["help", ..] => Plain(Command.Help),
            ["sample"] => Plain(Command.Sample),
            ["schema"] => Plain(Command.Schema),
            _ => Ask(words, asTable),
        };
    }

    private static Arguments Ask(List<string> words, bool asTable)
    {
        foreach (var (word, question) in Questions)
        {
            if (word != words[0])
            {
                continue;
            }

            return words.Count switch
            {
                1 => Wrong($"name the job file: pressrun {word} job.json, or - for standard input."),
                2 => new Arguments(Command.Ask, question, words[1], asTable, null),
                _ => Wrong($"one job file at a time: {words[2]} is one word too many."),
            };
        }

        return Wrong($"the command {words[0]} is not known; there are estimate, ladder, impose, compare, reprint, sample and schema.");
    }

    private static Arguments Plain(Command command) => new(command, default, string.Empty, false, null);

    private static Arguments Wrong(string mistake) => new(Command.Help, default, string.Empty, false, mistake);
}
