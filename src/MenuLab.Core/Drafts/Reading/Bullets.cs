namespace MenuLab.Core.Drafts.Reading;

/// <summary>Bullets and numbering in front of a source line.</summary>
internal static class Bullets
{
    /// <summary>The first token behind them. "1. 5" is number one and then five; "-5" is no bullet.</summary>
    public static int Skip(List<Token> tokens)
    {
        var at = 0;
        while (at < tokens.Count && IsBullet(tokens, at))
        {
            at++;
        }
        if (at + 2 < tokens.Count && tokens[at].IsNumber && tokens[at].Value is >= 1 and < 100 && tokens[at].Value == Math.Floor(tokens[at].Value)
            && (tokens[at + 1].Is(".") || tokens[at + 1].Is(")")) && !tokens[at + 1].Spaced && tokens[at + 2].Spaced)
        {
            return at + 2;
        }
        return at;
    }

    private static bool IsBullet(List<Token> tokens, int at)
    {
        var token = tokens[at];
        if (token.Kind != TokenKind.Mark)
        {
            return false;
        }
        var next = at + 1 < tokens.Count ? tokens[at + 1] : default;
        return token.Plain switch
        {
            "" or "*" or "--" or "'" or "." or "..." or "=" => true,
            "-" or ">" => at + 1 >= tokens.Count || next.Spaced || !next.IsNumber,
            _ => false,
        };
    }
}
