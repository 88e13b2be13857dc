using PressRun.Web.Running;

if (args is ["--version"])
{
    Console.WriteLine(HostSetup.Version);
    return 0;
}

try
{
    await PressRunApp.Build(args).RunPressRunAsync();
    return 0;
}
catch (OperationCanceledException)
{
    await Console.Error.WriteLineAsync("PressRun was stopped before it was ready.");
    return 0;
}
catch (Exception fault) when (StartFaults.Sentence(fault) is { } sentence)
{
    await Console.Error.WriteLineAsync(sentence);
    return 1;
}
