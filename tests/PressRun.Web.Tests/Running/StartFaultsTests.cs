using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using PressRun.Data.Running;
using PressRun.Web.Api;
using PressRun.Web.Running;

namespace PressRun.Web.Tests.Running;

/// <summary>What stands in the way of a start is said in a sentence; a defect is not.</summary>
public sealed class StartFaultsTests
{
    [Theory]
    [InlineData("5080", "5080 is no address to listen on.")]
    [InlineData("http://127.0.0.1:5080;x", "x is no address to listen on.")]
    [InlineData("http://127.0.0.1:5080/press", "set PathBase=/press")]
    public void An_address_that_cannot_be_used_is_told(string addresses, string sentence)
    {
        var refused = Assert.Throws<StartRefusedException>(() => Listening.Check(Of("urls", addresses), loopbackOnly: false));

        Assert.Contains(sentence, StartFaults.Sentence(refused), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://0.0.0.0:5080", "http://localhost:5080")]
    [InlineData("http://[::]:5080", "http://localhost:5080")]
    [InlineData("http://*:5080", "http://localhost:5080")]
    [InlineData("https://192.0.2.7:5443", "https://192.0.2.7:5443")]
    public void The_address_that_is_printed_can_be_opened(string listensOn, string printed) => Assert.Equal(printed, Listening.ToOpen(listensOn));

    [Theory]
    [InlineData("http://[::]:5736", "http://localhost:5736/press (listening on port 5736 of every address of this machine)")]
    [InlineData("http://127.0.0.1:5080", "http://127.0.0.1:5080/press")]
    public void What_is_printed_says_where_it_listens(string listensOn, string told) => Assert.Equal(told, Listening.Told([listensOn], "/press"));

    [Theory]
    [InlineData("PressRun:Api:MostWaiting", "many", "PressRun__Api__MostWaiting is many; write a whole number.")]
    [InlineData("PressRun:Api:MostWaiting", "20000", "A setting cannot be used. PressRun__Api__MostWaiting is 20000; write a whole number from 0 to 10,000.")]
    [InlineData("PressRun:Api:MostAtOnce", "0", "A setting cannot be used. PressRun__Api__MostAtOnce is 0; write a whole number from 1 to 1,000.")]
    [InlineData("PressRun:Api:MostLongAtOnce", "-1", "A setting cannot be used. PressRun__Api__MostLongAtOnce is -1; write a whole number from 1 to 1,000.")]
    [InlineData("PressRun:Api:LongestSeconds", "601", "A setting cannot be used. PressRun__Api__LongestSeconds is 601; write a whole number from 1 to 600.")]
    public void A_limit_that_cannot_be_used_is_told(string key, string value, string words)
    {
        var services = new ServiceCollection().AddSingleton(Of(key, value)).AddLogging();
        services.AddPressRunApi();
        using var built = services.BuildServiceProvider();

        var fault = Assert.ThrowsAny<Exception>(() => built.GetRequiredService<IOptions<ApiLimits>>().Value);

        Assert.Equal(words, StartFaults.Sentence(fault));
    }

    [Theory]
    [InlineData("Logging:LogLevel:Default", "Verbose", "Logging__LogLevel__Default is Verbose; write Trace, Debug, Information, Warning, Error, Critical or None.")]
    [InlineData("Logging:Console:LogLevel:PressRun", "Loud", "Logging__Console__LogLevel__PressRun is Loud; write Trace, Debug, Information, Warning, Error, Critical or None.")]
    [InlineData("Logging:Console:FormatterName", "jsonn", "Logging__Console__FormatterName is jsonn; write json, or leave it out.")]
    public void A_setting_of_the_log_that_cannot_be_used_is_named(string key, string value, string sentence) => Assert.Equal(sentence, Refusal($"--{key}={value}"));

    [Fact]
    public void A_secret_that_is_set_and_in_a_file_too_is_refused()
    {
        var file = Path.GetTempFileName();
        try
        {
            Assert.Equal(
                "PressRun__MailPassword and PressRun__MailPassword_FILE are both set, and nobody can tell which is meant. Leave one of them out.",
                Refusal("--PressRun:MailPassword=hush", $"--PressRun:MailPassword_FILE={file}"));
            WebApplication.CreateBuilder(["--PressRun:MailPassword=", $"--PressRun:MailPassword_FILE={file}"]).AddPressRunHost();
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void A_word_for_the_log_that_is_none_is_told()
    {
        using var services = new ServiceCollection().AddLogging(logging => logging.AddConfiguration(Of("LogLevel:Default", "Loud"))).BuildServiceProvider();

        var fault = Assert.ThrowsAny<Exception>(() => services.GetRequiredService<ILoggerFactory>().CreateLogger("any"));

        Assert.Contains("Loud", StartFaults.Sentence(fault), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(SocketError.AccessDenied, "ports below 1024 are root's")]
    [InlineData(SocketError.AddressNotAvailable, "an address that this machine does not have")]
    public void A_port_that_may_not_be_had_is_told(SocketError error, string words) =>
        Assert.Contains(words, StartFaults.Sentence(new SocketException((int)error)), StringComparison.Ordinal);

    [Fact]
    public void A_database_that_goes_in_the_middle_of_a_start_is_told() =>
        Assert.StartsWith("The database stopped answering", StartFaults.Sentence(new InvalidOperationException("Somebody asked.", new DatabaseAwayException())), StringComparison.Ordinal);

    [Fact]
    public void A_defect_is_told_whole() => Assert.Null(StartFaults.Sentence(new InvalidOperationException("Nobody foresaw it.")));

    private static string? Refusal(params string[] settings) =>
        StartFaults.Sentence(Assert.Throws<StartRefusedException>(() => WebApplication.CreateBuilder(settings).AddPressRunHost()));

    private static IConfiguration Of(string key, string value) => new ConfigurationBuilder().AddInMemoryCollection([new(key, value)]).Build();
}
