using PressRun.Web.Layout;

var builder = WebApplication.CreateBuilder(args);
builder.Services.AddPressRunPages();
var app = builder.Build();
app.UseViewerLocale();
app.UseStatusCodePagesWithReExecute("/not-found");
app.UseAntiforgery();
app.MapGet("/livez", () => "alive");
app.MapPressRunPages();
await app.RunAsync();
