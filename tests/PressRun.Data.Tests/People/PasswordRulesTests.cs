using PressRun.Data.People;

namespace PressRun.Data.Tests.People;

/// <summary>NIST SP 800-63B-4, 3.1.1.2 (from memory): long, no rules on composition, compared with passwords that are common, expected or taken from the place and the person.</summary>
public sealed class PasswordRulesTests
{
    private static readonly string[] Known = ["Orla Lindqvist", "orla@example.org", "Harbour Loft"];

    // Putting signs together takes time by the square of how many there are, and everybody may send some.
    [Fact]
    public void What_is_too_long_for_a_password_is_left_as_it_is()
    {
        var text = string.Concat(Enumerable.Repeat("e\u0301", PasswordRules.Most * 3));

        Assert.Same(text, PasswordRules.Normal(text));
        Assert.Contains("at most", PasswordRules.Problem(text), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Password12345678")]
    [InlineData("P@ssw0rd!2024!!!")]
    [InlineData("password password")]
    [InlineData("iloveyou20202020")]
    [InlineData("Welcome123456789")]
    [InlineData("123456789012345")]
    [InlineData("aaaaaaaaaaaaaaaa")]
    [InlineData("abcdefghijklmnop")]
    [InlineData("qwertyuiop123456")]
    [InlineData("abcabcabcabcabcabc")]
    [InlineData("Orla Lindqvist 1")]
    [InlineData("lindqvist1234567")]
    [InlineData("HarbourLoft2026!")]
    [InlineData("pressrun12345678")]
    [InlineData("orla@example.org1")]
    public void What_is_tried_first_is_refused_however_long_it_was_made(string password) => Assert.NotNull(PasswordRules.Problem(password, Known));

    [Theory]
    [InlineData("six herons, one umbrella")]
    [InlineData("correct horse stapler moon")]
    [InlineData("tidlo mravec okno slama")]
    [InlineData("83jf0sk2mdq9xwe")]
    [InlineData("鷺が六羽と傘が一本あります雨の日")]
    [InlineData("Orla keeps seven wet herons in a loft")]
    public void What_nobody_tries_first_is_taken_whatever_it_is_made_of(string password) => Assert.Null(PasswordRules.Problem(password, Known));

    [Fact]
    public void A_long_one_is_looked_at_whole()
    {
        Assert.NotNull(PasswordRules.Problem(string.Concat(Enumerable.Repeat("password1", PasswordRules.Most / 9)), Known));
        Assert.NotNull(PasswordRules.Problem(new string('a', PasswordRules.Most + 1), Known));
        Assert.NotNull(PasswordRules.Problem("herons", Known));
    }
}
