using Microsoft.Extensions.Configuration;
using PressRun.Data.Running;

namespace PressRun.Data.Tests;

public sealed class SettingsReadingTests
{
    [Theory]
    [InlineData("PressRun:Sample", "maybe", "PressRun__Sample is maybe; write true or false.")]
    [InlineData("PressRun:Sample", "1", "PressRun__Sample is 1; write true or false.")]
    [InlineData("PressRun:MailPort", "25x", "PressRun__MailPort is 25x; write a whole number.")]
    [InlineData("PressRun:MailPort", "1,000", "PressRun__MailPort is 1,000; write a whole number.")]
    public void What_cannot_be_read_is_refused_in_a_sentence(string key, string value, string sentence) =>
        Assert.Equal(sentence, Assert.Throws<StartRefusedException>(() => SettingsReading.Emptied(Of((key, value)))).Message);

    [Fact]
    public void What_is_empty_is_not_set()
    {
        var emptied = SettingsReading.Emptied(Of(("PressRun:Sample", ""), ("PressRun:MailPort", " "), ("PressRun:SignIn", ""), ("PressRun:MailServer", "mail.example")));

        Assert.Equal(new Dictionary<string, string?> { ["PressRun:Sample"] = "False", ["PressRun:MailPort"] = "587", ["PressRun:SignIn"] = "on" }, emptied);
    }

    [Theory]
    [InlineData("PressRun:Smaple", "PressRun__Smaple", "PressRun__Sample")]
    [InlineData("PressRun:Api:MostWaitng", "PressRun__Api__MostWaitng", "PressRun__Api__MostWaiting")]
    [InlineData("PressRun:OpenIdSecrt_FILE", "PressRun__OpenIdSecrt_FILE", "PressRun__OpenIdSecret")]
    [InlineData("PRESSRUN_DATAFOLDER", "PRESSRUN_DATAFOLDER", "PressRun__DataFolder")]
    [InlineData("ConnectionStrings:PresRun", "ConnectionStrings__PresRun", "ConnectionStrings__PressRun")]
    public void What_is_no_setting_is_told_with_the_nearest_that_there_is(string key, string variable, string nearest) =>
        Assert.Equal((variable, nearest), Assert.Single(SettingsReading.Unknown(Of((key, "x"), ("PATH", "/bin")))));

    [Theory]
    [InlineData("pressrun:sample")]
    [InlineData("PressRun:OpenIdSecret_FILE")]
    [InlineData("PressRun:Api:MostWaiting")]
    [InlineData("ConnectionStrings:PressRun_FILE")]
    [InlineData("Logging:LogLevel:Default")]
    public void What_is_a_setting_is_not_told(string key) => Assert.Empty(SettingsReading.Unknown(Of((key, "x"))));

    private static IConfigurationRoot Of(params (string Key, string Value)[] settings) =>
        new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(setting => setting.Key, setting => (string?)setting.Value)).Build();
}
