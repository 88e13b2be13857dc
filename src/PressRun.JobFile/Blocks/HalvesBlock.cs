using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>The job file's <c>halves</c>: half of the run has a part on another stock.</summary>
public static class HalvesBlock
{
    /// <summary>Name of the block.</summary>
    public const string Name = "halves";

    private const string Rule = "Write halves of a run as { \"part\", \"second\" }: the part's name, and its stock in the second half.";

    /// <summary>Reads the block of a job.</summary>
    /// <param name="job">The whole job file.</param>
    /// <param name="edition">Its edition, whose parts are named; null where it could not be read.</param>
    /// <param name="stockIds">Its stocks; null where they could not be read.</param>
    /// <returns>The second half, or null where there is no such block or a problem was noted.</returns>
    public static SecondHalf? ReadMember(JsonBlock job, Edition? edition, IReadOnlySet<string>? stockIds) =>
        Read(job, edition?.Parts, stockIds) is var (part, second) ? new SecondHalf(part, second) : null;

    /// <summary>Reads the block of anything that has it.</summary>
    /// <param name="owner">What has it.</param>
    /// <param name="parts">The parts that can be named; null where they could not be read.</param>
    /// <param name="stockIds">The stocks that can be named; null where they could not be read.</param>
    public static (int Part, string Second)? Read(JsonBlock owner, IReadOnlyList<Part>? parts, IReadOnlySet<string>? stockIds)
    {
        if (owner.Block(Name, Need.May, Rule) is not { } block)
        {
            return null;
        }

        var name = block.Text("part", Need.Must, JobRules.Name);
        var part = name is null || parts is null ? null : PartNames.Find(name, parts, block.Path.Member("part"), block.Problems);
        var second = block.Text("second", Need.Must, JobRules.Id);
        Keys.CheckKnown(second, stockIds, block.Path.Member("second"), "stock", block.Problems);
        block.Close();
        return part is { } place && second is not null ? (place, second) : null;
    }
}
