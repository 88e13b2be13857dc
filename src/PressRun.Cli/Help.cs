using System.Reflection;

namespace PressRun.Cli;

/// <summary>What the program says about itself.</summary>
internal static class Help
{
    /// <summary>How the program is used, with examples.</summary>
    public const string Text = """
        pressrun - what a print run costs, from one job file

        Usage
          pressrun estimate FILE [--table]   the full costing at the job's quantity
          pressrun ladder FILE [--table]     what each quantity of the job's ladder costs, and better buys
          pressrun impose FILE [--table]     pages on each sheet, creep, stapler stop and cuts
          pressrun compare FILE [--table]    the edition on the papers that the job's compare names
          pressrun reprint FILE [--table]    how many to print, from the demand that the job's reprint names
          pressrun sample                    a small job file to start from
          pressrun schema                    the JSON Schema of the job file, for an editor that checks as you type

        FILE is a job file in JSON, or - for standard input. The answer is JSON on standard output;
        --table lays it out for reading instead.

        Example
          pressrun sample > job.json
          pressrun estimate job.json --table
          pressrun ladder job.json | jq .betterBuys

        Change the quantity, a paper or a price in job.json and ask again. A job file holds all that a costing
        needs: the edition with its parts, the papers, the shop's price list, your own bench, and how you sell.
        Lengths and weights carry their unit ("5 1/2 in", "148 mm", "80 lb cover", "120 gsm"), money is in the
        job's currency, and rates are fractions (0.05 is five per cent).

        Exit status
          0  answered
          2  refused; standard error says, line by line, where in the job file ($.edition.parts[1].pages),
             what stands there, and what would be right - or that the file or the command is not there
        Then nothing is written to standard output.

        Taxes and postage are the figures in the job file: check them with the carrier and a licensed adviser.

        """;

    /// <summary>Name and version, on one line.</summary>
    public static string Version =>
        $"pressrun {typeof(Help).Assembly.GetCustomAttribute<AssemblyFileVersionAttribute>()?.Version}\n";
}
