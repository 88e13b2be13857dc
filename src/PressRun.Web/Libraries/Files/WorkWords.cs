namespace PressRun.Web.Libraries.Files;

/// <summary>What is being done with a file.</summary>
public enum ImportWork
{
    /// <summary>It is taken from the browser.</summary>
    Taking,

    /// <summary>It is read through.</summary>
    Looking,

    /// <summary>Its rows are stored.</summary>
    BringingIn,

    /// <summary>What was stored of it is taken out again.</summary>
    TakingBack,
}

/// <summary>Words for what is being done with a file.</summary>
internal static class WorkWords
{
    /// <summary>What is being done.</summary>
    public static string Of(ImportWork work) => work switch
    {
        ImportWork.Taking => Say($"Taking the file"),
        ImportWork.Looking => Say($"Looking at"),
        ImportWork.BringingIn => Say($"Bringing in"),
        _ => Say($"Taking back"),
    };

    /// <summary>What is being done, and which row it has come to. Only reading and storing tell their rows.</summary>
    public static string At(ImportWork work, string row) => work == ImportWork.Looking ? Say($"Looking at row {row}") : Say($"Bringing in row {row}");
}
