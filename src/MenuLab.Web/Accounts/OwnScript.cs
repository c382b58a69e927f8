namespace MenuLab.Web.Accounts;

/// <summary>
/// Requests that only a script of this program can send. A page of another site cannot send this header without being allowed
/// to, and nobody is: it keeps forged requests out where a token would be too old after a night without network.
/// </summary>
public static class OwnScript
{
    private const string Header = "X-Captured";

    /// <summary>A script of this program sent it.</summary>
    public static bool Sent(HttpRequest request) => request.Headers.ContainsKey(Header);
}
