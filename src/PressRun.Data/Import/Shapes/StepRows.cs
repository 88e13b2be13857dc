using PressRun.Data.Import.Tables;

namespace PressRun.Data.Import.Shapes;

/// <summary>Rules of steps, told at the row that breaks them.</summary>
internal static class StepRows
{
    /// <summary>True where steps rise.</summary>
    public static bool Rise<T>(IReadOnlyList<T> steps, Func<T, decimal> place, int column, Refuse refuse)
    {
        var rise = true;
        for (var index = 1; index < steps.Count; index++)
        {
            if (place(steps[index]) <= place(steps[index - 1]))
            {
                refuse(index, column, "Steps rise: write more than in the row above.");
                rise = false;
            }
        }

        return rise;
    }

    /// <summary>True where steps rise from 1.</summary>
    public static bool RiseFromOne<T>(IReadOnlyList<T> steps, Func<T, decimal> place, int column, Refuse refuse)
    {
        if (place(steps[0]) != 1m)
        {
            refuse(0, column, "The first step of a price begins at 1.");
            return false;
        }

        return Rise(steps, place, column, refuse);
    }
}
