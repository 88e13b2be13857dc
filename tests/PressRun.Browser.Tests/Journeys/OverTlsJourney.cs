using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class OverTlsJourney(Chromium chromium)
{
    [Fact]
    public async Task Over_tls_every_cookie_is_tied_to_the_host_and_somebody_signs_in_and_out_by_them()
    {
        var file = Path.GetTempFileName();
        await File.WriteAllBytesAsync(file, Certificate(), TestContext.Current.CancellationToken);
        await using var app = await AppProcess.StartAsync(sample: true, signIn: true, new()
        {
            ["Kestrel__Endpoints__Tls__Url"] = "https://127.0.0.1:0", ["Kestrel__Endpoints__Tls__Certificate__Path"] = file,
        });
        File.Delete(file);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        var page = visit.Page;
        await page.GotoAsync("first-owner");
        await visit.Field("Code from the log").FillAsync(await app.OwnerCodeAsync());
        await visit.Field("Your name").FillAsync("Ada Quill");
        await visit.Field("Mail address").FillAsync("ada@example.org");
        await visit.Field("Password").FillAsync(PeopleApp.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Become the owner" }).ClickAsync();
        await visit.AnswersAsync();
        await visit.OpenAsync("papers");
        await page.GetByRole(AriaRole.Button, new() { Name = "Dark table" }).ClickAsync();
        await visit.ReloadAsync();
        await Expect(page.Locator("html")).ToHaveAttributeAsync("data-table", "dark");

        var cookies = await page.Context.CookiesAsync();
        Assert.True(cookies.Count >= 4, $"The sign-in, the device, the form's token and the table are kept: {string.Join(' ', cookies.Select(cookie => cookie.Name))}");
        Assert.All(cookies, cookie => Assert.True(cookie is { Secure: true, Path: "/" } && cookie.Name.StartsWith("__Host-", StringComparison.Ordinal), cookie.Name));

        await page.GotoAsync("account");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Sign in");
        Assert.DoesNotContain(await page.Context.CookiesAsync(), cookie => cookie.Name == "__Host-pressrun");
        visit.WasQuiet();
    }

    private static byte[] Certificate()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=127.0.0.1", key, HashAlgorithmName.SHA256);
        var now = TimeProvider.System.GetUtcNow();
        using var certificate = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
        return certificate.Export(X509ContentType.Pfx);
    }
}
