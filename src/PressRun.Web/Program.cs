var builder = WebApplication.CreateBuilder(args);
var app = builder.Build();
app.MapGet("/livez", () => "alive");
await app.RunAsync();
