using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Data.Drafts.Rounds;
using MenuLab.Web.Features.Rounds;
using Microsoft.AspNetCore.Components;

namespace MenuLab.Web.Features.Drafts;

/// <summary>The list of drafts: found as one types, taken up, parked and dropped in place.</summary>
public sealed partial class DraftsPage(DraftDesk desk) : IDisposable
{
    private static readonly Standing[] Standings = [Standing.InTheWorks, Standing.Parked, Standing.Dropped];

    private readonly CancellationTokenSource _left = new();
    private IReadOnlyList<DraftRow>? _all;
    private Standing _standing = Standing.InTheWorks;
    private string _searched = "";
    private string _said = "";
    private IReadOnlyList<ServesNothing> _idle = [];
    private IReadOnlyList<DueTaste> _due = [];

    private IReadOnlyList<DraftRow> Found => SearchName.Of(_searched) is { Length: > 0 } search ? [.. _all!.Where(d => d.Searched.Contains(search, StringComparison.Ordinal))] : _all!;

    private IReadOnlyList<DraftRow> Shown => [.. Found.Where(d => d.Standing == _standing)];

    private string Nothing =>
        _searched.Length == 0 ? $"Nothing is {StandingWords.Of(_standing)}."
        : Found.Count == 0 ? $"Nothing is called \"{_searched}\" or made for it."
        : $"Nothing {StandingWords.Of(_standing)} is called \"{_searched}\"; look under the other words above.";

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        _due = await desk.DueTastesAsync();
        _all = await desk.ListAsync(_left.Token);
    }

    private void Search(ChangeEventArgs typed) => _searched = typed.Value as string ?? "";

    private async Task StandAsync((DraftRow Draft, Standing Standing, string Reason) asked)
    {
        var problem = await desk.StandAsync(asked.Draft, asked.Standing, asked.Reason, _left.Token);
        _all = await desk.ListAsync(_left.Token);
        _idle = problem.Length > 0 || asked.Standing == Standing.InTheWorks ? [] : await desk.ServesNothingAsync(asked.Draft.Id);
        _said = problem.Length > 0 ? problem : $"{asked.Draft.Name} is {StandingWords.Of(asked.Standing)} now.";
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _left.Cancel();
        _left.Dispose();
    }
}
