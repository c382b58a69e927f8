using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Data.House;
using MenuLab.Data.Opening;
using MenuLab.Data.Pantry;
using MenuLab.Data.Records;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Schemas;

/// <summary>Makes the small filled database of the schema that is about to be released; kept beside this file from then on.</summary>
internal static class FilledDatabase
{
    public const string Make = "--make-schema-fixture";

    public static async Task<int> At(string file)
    {
        var folder = Directory.CreateTempSubdirectory("menulab-fixture-").FullName;
        await using (var store = await Harbour.Furnished(await SqliteStore.Open(new SqliteStoreOptions { File = Path.Combine(folder, "house.db") })))
        {
            await Fill(store);
            await using var db = store.Read();
            // Compact, and without a write-ahead log beside it.
            await db.Database.ExecuteSqlAsync($"VACUUM INTO {Path.GetFullPath(file)}");
        }
        Directory.Delete(folder, recursive: true);
        return 0;
    }

    private static async Task Fill(Store store)
    {
        var id = await Harbour.Mix(store);
        Assert.True((await Harbour.Iterations(store).Save(await Harbour.ToSave(store, id))).IsOk);
        LineId last;
        await using (var db = store.Read())
        {
            last = (await db.Drafts.SingleAsync()).Lines[^1].Id;
        }
        EditAction[] actions =
        [
            new Rename("Harbour fog № 2"), new ChooseStyle("short_sour"), new ChangeBrief(BriefFields.Claim, new Brief { Claim = "below 0.5 % ABV" }),
            new AddLine(LineId.New(), LineContent.KeptAsTyped("5 of Mira's smoke", 5), last),
        ];
        for (var i = 0; i < actions.Length; i++)
        {
            Assert.True((await Harbour.Drafts(store).Apply(id, EditId.New(), Harbour.Somebody, PageId.New(), 4 + i, actions[i])).IsOk);
        }
        Assert.True((await Harbour.Iterations(store).Save(await Harbour.ToSave(store, id, "a name and a style"))).IsOk);
        var wish = new RoundToStart { Id = RoundId.New(), Draft = id, Size = RoundSize.Half, Cells = [new(PourLetter.B, last, 25)] };
        Assert.Empty((await Harbour.Rounds(store).Start(wish, Harbour.Somebody)).Problems);
        var note = new PourNote { Round = wish.Id, Letter = PourLetter.B, Wishes = [new(TasteAxis.Sour, Wish.More)], Verdict = Verdict.Maybe, Words = "thin" };
        Assert.Empty((await Harbour.Captures(store).Note(EntryId.New(), DeviceId.New(), Harbour.Somebody, note)).Problems);
        Assert.True((await Harbour.Rounds(store).Attach(AttachmentId.New(), "image/png", [1, 2, 3], Harbour.Somebody)).IsOk);
        await store.Writer.Write(async db =>
        {
            var pack = new PackRow { Id = PackId.New(), Ingredient = Harbour.Verjus.Id, Site = FirstRows.FirstSite, Amount = 700, Unit = "ml" };
            db.Add(pack);
            db.Add(new PriceRow
            {
                Id = PriceId.New(), Pack = pack.Id, Amount = 123400, Currency = "EUR", IsGross = true, TaxRate = 190000, FromDay = new DateOnly(2026, 11, 3), EnteredBy = Harbour.Somebody,
            });
            db.Add(new ReadingRow { Id = ReadingId.New(), Ingredient = Harbour.Verjus.Id, Kind = "ph", Value = 2.9, Unit = "", Day = new DateOnly(2026, 11, 3), ReadBy = Harbour.Somebody });
            db.Add(new RecordEntry { Id = RecordId.New(), Who = Harbour.Somebody, What = "price_entered", OnTable = "packs", OnId = pack.Id.Value, At = Harbour.Noon });
            return await db.SaveChangesAsync();
        });
    }
}
