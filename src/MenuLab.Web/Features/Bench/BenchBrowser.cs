using MenuLab.Core.Drafts;
using Microsoft.JSInterop;

namespace MenuLab.Web.Features.Bench;

/// <summary>Something that was typed into a field of the bench and that the server never answered for.</summary>
/// <param name="Name">Name under which the browser keeps it.</param>
/// <param name="Line">The line whose amount it is; null for the steps of the build.</param>
/// <param name="Typed">As typed.</param>
/// <param name="Says">What it is, in words.</param>
public sealed record Leftover(string Name, LineId? Line, string Typed, string Says);

/// <summary>What the browser kept of a draft: the line being typed, lines that wait, values of cells, the reason.</summary>
public sealed record KeptText(string Line, IReadOnlyList<EnteredEventArgs> Waiting, string Reason, IReadOnlyList<KeptField> Fields)
{
    /// <summary>The values of cells that differ from what the draft has.</summary>
    public IReadOnlyList<Leftover> Left(BenchView view)
    {
        var left = new List<Leftover>();
        foreach (var field in Fields)
        {
            if (field.Name.Split('/') is ["amount", _, var id] && Guid.TryParse(id, out var guid) && view.Lines.FirstOrDefault(l => l.Id == new LineId(guid)) is { Row: ReadRow row } line)
            {
                if (row.Amount != field.Text.Trim())
                {
                    left.Add(new Leftover(field.Name, line.Id, field.Text, $"{row.Ingredient}: {field.Text}"));
                }
            }
            else if (field.Name.StartsWith("steps/", StringComparison.Ordinal) && field.Text.Trim() != string.Join('\n', view.Build.Steps))
            {
                left.Add(new Leftover(field.Name, null, field.Text, "steps: " + field.Text.Replace("\n", " · ", StringComparison.Ordinal)));
            }
        }
        return left;
    }
}

/// <summary>A field that the browser kept.</summary>
public sealed record KeptField(string Name, string Text);

/// <summary>The browser's side of the bench (kept-text.js, keys.js).</summary>
public sealed class BenchBrowser(IJSRuntime script)
{
    /// <summary>What the browser kept of a draft.</summary>
    public async Task<KeptText> ReadAsync(Guid draft)
    {
        var fields = new List<KeptField>(await script.InvokeAsync<KeptField[]>("keptText.left", $"amount/{draft}/"));
        fields.AddRange(await script.InvokeAsync<KeptField[]>("keptText.left", $"steps/{draft}"));
        return new KeptText(
            await script.InvokeAsync<string?>("keptText.read", $"line/{draft}") ?? "",
            await script.InvokeAsync<EnteredEventArgs[]>("keptText.waiting", draft),
            await script.InvokeAsync<string?>("keptText.read", $"reason/{draft}") ?? "",
            fields);
    }

    /// <summary>A typed line is durable: the browser lets it go.</summary>
    public ValueTask ArrivedAsync(Guid draft, Guid entry) => script.InvokeVoidAsync("keptText.arrived", draft, entry);

    /// <summary>What was typed into a field is durable: the browser lets it go.</summary>
    public ValueTask DropAsync(string name) => script.InvokeVoidAsync("keptText.drop", name);

    /// <summary>The typed line was completed: it is kept as it now is, and the field has the focus.</summary>
    public ValueTask FillLineAsync(Guid draft, string text) => script.InvokeVoidAsync("keptText.fill", $"line/{draft}", text);

    /// <summary>Puts the focus on the first element that a selector finds.</summary>
    public ValueTask FocusAsync(string selector) => script.InvokeVoidAsync("keys.focus", selector);
}
