using PressRun.Data.Running;
using PressRun.Web.Running;

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
catch (StartRefusedException refusal)
{
    await Console.Error.WriteLineAsync(refusal.Message);
    return 1;
}
