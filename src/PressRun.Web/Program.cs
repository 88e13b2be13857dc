using PressRun.Data.Running;
using PressRun.Web.Api;
using PressRun.Web.Layout;
using PressRun.Web.Running;

try
{
    var builder = WebApplication.CreateBuilder(args);
    builder.AddPressRunHost();
    builder.Services.AddPressRunData(builder.Configuration);
    builder.Services.AddPressRunPages();
    builder.Services.AddPressRunApi();
    var app = builder.Build();
    app.UsePressRunHost();
    app.UsePageHeaders();
    app.UseViewerLocale();
    app.UseStatusCodePagesWithReExecute("/not-found");
    app.UseAntiforgery();
    app.MapPressRunHealth();
    app.MapPressRunApi();
    app.MapPressRunPages();
    await app.RunPressRunAsync();
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
