using System.Net;
using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using MenuLab.Web.Features.Specs;
using MenuLab.Web.Tests.Features.History;

namespace MenuLab.Web.Tests.Features.Specs;

[Collection<AtTheHarbour>]
public sealed class DraftCardRoutesTests(HarbourHouse harbour)
{
    [Fact]
    public async Task Iterations_benches_and_sheets_print_as_pdf()
    {
        var iteration = (await harbour.Desk().OfAsync(harbour.Draft))!.Iterations[3].Id;
        foreach (var address in new[] { DraftCards.OfIteration(iteration), DraftCards.OfIteration(iteration, "FourBySix"), DraftCards.OfBench(harbour.Draft), DraftCards.OfSheet([harbour.Draft, harbour.Draft]) })
        {
            using var answer = await harbour.Client.GetAsync(address, TestContext.Current.CancellationToken);
            Assert.Equal((HttpStatusCode.OK, "application/pdf"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        }
    }

    [Fact]
    public async Task What_is_not_there_or_cannot_be_printed_is_said_in_plain_words()
    {
        await Says(HttpStatusCode.NotFound, "no such iteration", DraftCards.OfIteration(IterationId.New()));
        await Says(HttpStatusCode.NotFound, "no such draft", DraftCards.OfBench(DraftId.New()));
        await Says(HttpStatusCode.NotFound, "not in this house", DraftCards.OfSheet([harbour.Draft, DraftId.New()]));
        await Says(HttpStatusCode.UnprocessableEntity, "no line to print yet", DraftCards.OfBench(harbour.Empty));
        await Says(HttpStatusCode.UnprocessableEntity, "no such paper", DraftCards.OfBench(harbour.Draft, "Papyrus"));
        await Says(HttpStatusCode.UnprocessableEntity, "by their ids", "/card/sheet?drafts=a,b");
        await Says(HttpStatusCode.UnprocessableEntity, "by their ids", "/card/sheet");
    }

    [Fact]
    public async Task A_card_of_an_iteration_has_its_names_its_ice_and_its_cautions_as_they_stood()
    {
        var (state, _) = (await harbour.Desk().IterationAsync(harbour.Draft, 4))!.Value;
        var renamed = state with
        {
            Snapshot = state.Snapshot with
            {
                Lines = [.. state.Snapshot.Lines.Select(l => l with { IngredientName = "Old " + l.IngredientName })],
                Models = state.Snapshot.Models with { MethodIce = state.Snapshot.Models.MethodIce! with { Key = "well_cubes", Name = "Cubes of the old well" } },
            },
        };
        var source = CardSource.Of(renamed);
        Assert.Equal("iteration 4", source.Issue);
        Assert.All(source.Names.Values, name => Assert.StartsWith("Old ", name, StringComparison.Ordinal));
        Assert.Equal("Cubes of the old well", source.Catalogue.Ice(source.Build.Ice)!.Name);
        Assert.Equal(["a whisper of beet leaf"], source.Open);
        Assert.Same(state.Balance, source.Balance);
        Assert.Equal(state.Cautions().Select(c => c.Text), source.Cautions.Select(c => c.Text));
    }

    private async Task Says(HttpStatusCode status, string words, string address)
    {
        using var answer = await harbour.Client.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(words, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }
}
