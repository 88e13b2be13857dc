namespace PressRun.JobFile;

/// <summary>The files that belong to the contract and travel with the program.</summary>
public static class JobResources
{
    /// <summary>The JSON Schema (draft 2020-12) of the job file, UTF-8.</summary>
    public static byte[] Schema => Read("job-1.schema.json");

    /// <summary>A small job file to start from, invented, UTF-8.</summary>
    public static byte[] SampleJob => Read("sample-job.json");

    private static byte[] Read(string name)
    {
        using var stream = typeof(JobResources).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program was built without {name}.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
