using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PressRun.Web.Running;

namespace PressRun.Web.Tests.Running;

public sealed class QuietLogsTests
{
    [Theory]
    [InlineData("LogLevel:Default")]
    [InlineData("LogLevel:Microsoft")]
    [InlineData("LogLevel:Microsoft.AspNetCore.Hosting.Diagnostics")]
    [InlineData("LogLevel:microsoft.aspnetcore.hosting.diagnostics")]
    [InlineData("LogLevel:*.Hosting.Diagnostics")]
    [InlineData("LogLevel:Microsoft.AspNetCore.Hosting.Diagnostics*")]
    [InlineData("LogLevel:*Routing.Matching.DfaMatcher")]
    [InlineData("LogLevel:microsoft.aspnetcore.routing.matching")]
    [InlineData("LogLevel:Microsoft.AspNetCore.Authentication.OpenIdConnect.OpenIdConnectHandler")]
    [InlineData("LogLevel:Microsoft.AspNetCore.Antiforgery")]
    [InlineData("Console:LogLevel:Default")]
    [InlineData("Console:LogLevel:Microsoft.AspNetCore.Hosting.Diagnostics")]
    public void No_setting_lets_the_framework_write_the_addresses_it_serves(string setting)
    {
        var configuration = new ConfigurationBuilder().AddInMemoryCollection([new(setting, "Trace")]).Build();
        var services = new ServiceCollection().AddLogging(logging => logging.AddConfiguration(configuration).AddConsole());
        services.KeepAddressesOutOfLogs();
        using var provider = services.BuildServiceProvider();
        var loggers = provider.GetRequiredService<ILoggerFactory>();

        // Off altogether: while it is on, its scope puts the address beside other lines.
        Assert.False(loggers.CreateLogger("Microsoft.AspNetCore.Hosting.Diagnostics").IsEnabled(LogLevel.Critical));
        Assert.False(loggers.CreateLogger("Microsoft.AspNetCore.Authentication.OpenIdConnect.OpenIdConnectHandler").IsEnabled(LogLevel.Critical));
        Assert.False(loggers.CreateLogger("Microsoft.AspNetCore.Antiforgery.DefaultAntiforgery").IsEnabled(LogLevel.Critical));
        Assert.False(loggers.CreateLogger("Microsoft.AspNetCore.Routing.Matching.DfaMatcher").IsEnabled(LogLevel.Information));
        Assert.True(loggers.CreateLogger("Microsoft.AspNetCore.Server.Kestrel").IsEnabled(LogLevel.Warning));
    }
}
