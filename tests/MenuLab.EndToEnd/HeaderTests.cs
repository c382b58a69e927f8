using System.Net;

namespace MenuLab.EndToEnd;

public class HeaderTests(SiteAndBrowser run)
{
    // Written out a second time on purpose: a change of the policy has to be meant.
    private const string Policy =
        "default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    [Theory]
    [InlineData("/", HttpStatusCode.OK)]
    [InlineData("/tokens.css", HttpStatusCode.OK)]
    [InlineData("/health/live", HttpStatusCode.OK)]
    [InlineData("/health/ready", HttpStatusCode.OK)]
    [InlineData("/nothing/here", HttpStatusCode.NotFound)]
    public async Task Every_answer_carries_the_policy_exactly_once_and_no_server_name(string path, HttpStatusCode status)
    {
        using var client = new HttpClient();
        using var answer = await client.GetAsync(run.Address + path);

        Assert.Equal(status, answer.StatusCode);
        Assert.Equal(Policy, Assert.Single(answer.Headers.GetValues("Content-Security-Policy")));
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Fact]
    public async Task The_page_holds_no_inline_script_and_no_address_of_a_third_party()
    {
        using var client = new HttpClient();
        var html = await client.GetStringAsync(run.Address + "/");

        Assert.DoesNotContain("<script>", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("http://", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("https://", html, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task An_address_that_does_not_exist_says_so_in_our_look()
    {
        await using var visit = await run.OpenAsync(path: "/nothing/here");

        Assert.Equal("Nothing here", await visit.Page.Locator("h1").TextContentAsync());
        Assert.Empty(visit.Strangers);
    }
}
