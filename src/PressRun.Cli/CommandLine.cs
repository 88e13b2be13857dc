using System.Text;
using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.JobFile.Reading;
using PressRun.JobFile.Results;

namespace PressRun.Cli;

/// <summary>The command line: reads a job file, answers on standard output, and says on standard error why it cannot.</summary>
internal static class CommandLine
{
    private const int Answered = 0;
    private const int Defect = 1;
    private const int Refused = 2;

    /// <summary>Runs one command.</summary>
    /// <returns>0 with an answer, 2 where the job file or the command was refused, 1 where the program itself failed. Where it is not 0,
    /// nothing was written to standard output.</returns>
    public static int Run(string[] args)
    {
        // People's names are in all scripts, whatever the terminal's own encoding.
        using var errors = new StreamWriter(Console.OpenStandardError(), new UTF8Encoding(false)) { AutoFlush = true };
        try
        {
            var arguments = Arguments.Parse(args);
            return arguments.Mistake is { } mistake ? Fail(errors, mistake) : Run(arguments, errors);
        }
        catch (IOException problem)
        {
            return Fail(errors, problem.Message);
        }
        catch (UnauthorizedAccessException problem)
        {
            return Fail(errors, problem.Message);
        }
        catch (Exception problem)
        {
            errors.WriteLine("pressrun: this is a defect of the program and not of your file; please report it with the lines below.");
            errors.WriteLine(problem);
            return Defect;
        }
    }

    private static int Run(Arguments arguments, StreamWriter errors)
    {
        switch (arguments.Command)
        {
            case Command.Help:
                Write(Encoding.UTF8.GetBytes(Help.Text));
                return Answered;
            case Command.Version:
                Write(Encoding.UTF8.GetBytes(Help.Version));
                return Answered;
            case Command.Sample:
                Write(JobResources.SampleJob);
                return Answered;
            case Command.Schema:
                Write(JobResources.Schema);
                return Answered;
            default:
                return Answer(arguments, errors);
        }
    }

    private static int Answer(Arguments arguments, StreamWriter errors)
    {
        if (arguments.File != "-" && !File.Exists(arguments.File))
        {
            return Fail(errors, $"there is no file {arguments.File}.");
        }

        var opened = JsonText.Open(ReadJobFile(arguments.File), JobRules.MostBytes);
        if (!opened.Succeeded)
        {
            return Refuse(errors, opened.Problems);
        }

        using var document = opened.Value;
        var outcome = JobAnswer.To(arguments.Question, document.RootElement);
        if (!outcome.Succeeded)
        {
            return Refuse(errors, outcome.Problems);
        }

        Write(arguments.AsTable ? Encoding.UTF8.GetBytes(AnswerTable.Of(outcome.Value)) : [.. outcome.Value.ToJson(indented: true), (byte)'\n']);
        return Answered;
    }

    // One byte more than a job file may have is enough to see that it has too many.
    private static ReadOnlyMemory<byte> ReadJobFile(string file)
    {
        using var stream = file == "-" ? Console.OpenStandardInput() : File.OpenRead(file);
        var buffer = new byte[JobRules.MostBytes + 1];
        var length = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        return buffer.AsMemory(0, length);
    }

    private static void Write(byte[] text)
    {
        using var output = Console.OpenStandardOutput();
        output.Write(text);
    }

    private static int Refuse(StreamWriter errors, IReadOnlyList<Problem> problems)
    {
        foreach (var problem in problems)
        {
            errors.WriteLine(problem);
        }

        return Refused;
    }

    private static int Fail(StreamWriter errors, string mistake)
    {
        errors.WriteLine("pressrun: " + mistake);
        errors.WriteLine("Try: pressrun --help");
        return Refused;
    }
}
