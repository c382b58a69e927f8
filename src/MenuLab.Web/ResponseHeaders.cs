namespace MenuLab.Web;

/// <summary>Headers that go with every answer; the content security policy is the one that matters.</summary>
public static class ResponseHeaders
{
    /// <summary>
    /// Everything comes from here: no third party, no inline script, no eval. Inline styles are allowed because the
    /// component library writes style attributes (and a nonce beside it would switch 'unsafe-inline' off again).
    /// 'self' covers the page's own WebSocket.
    /// </summary>
    public const string ContentSecurityPolicy =
        "default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>The headers.</summary>
    public static HeaderPolicyCollection Policy { get; } = new HeaderPolicyCollection()
        .AddContentSecurityPolicy(csp =>
        {
            csp.AddDefaultSrc().Self();
            csp.AddScriptSrc().Self();
            csp.AddStyleSrc().Self().UnsafeInline();
            csp.AddImgSrc().Self().Data();
            csp.AddFontSrc().Self();
            csp.AddConnectSrc().Self();
            csp.AddObjectSrc().None();
            csp.AddBaseUri().Self();
            csp.AddFormAction().Self();
            csp.AddFrameAncestors().None();
        })
        .AddContentTypeOptionsNoSniff()
        .AddFrameOptionsDeny()
        .AddReferrerPolicyNoReferrer()
        .AddCrossOriginOpenerPolicy(opener => opener.SameOrigin())
        .AddCrossOriginResourcePolicy(resource => resource.SameOrigin())
        .AddStrictTransportSecurityMaxAge();
}
