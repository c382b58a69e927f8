using MenuLab.Core.Drafts;

namespace MenuLab.Web.Features.Drafts;

/// <summary>The brief of a draft, opened to be changed.</summary>
/// <param name="Draft">The draft as it was when the form was filled.</param>
/// <param name="Form">The form.</param>
public sealed record OpenBrief(Draft Draft, BriefForm Form)
{
    private readonly (string Cost, string Price) _money = (Form.Cost, Form.Price);

    /// <summary>The edits that make the draft what the form says; only what differs, so that what somebody else wrote meanwhile stands.</summary>
    public IEnumerable<EditAction> Changes(NamedBrief wanted)
    {
        if (wanted.Name != Draft.Name)
        {
            yield return new Rename(wanted.Name);
        }
        if (wanted.Style != Draft.Style)
        {
            yield return new ChooseStyle(wanted.Style);
        }
        var (before, after) = (Draft.Brief, wanted.Brief);
        // Money that nobody touched keeps its currency, whatever the house's is by now.
        after = after with
        {
            CostLimit = Form.Cost == _money.Cost ? before.CostLimit : after.CostLimit,
            Price = Form.Price == _money.Price ? before.Price : after.Price,
        };
        var fields =
            (before.Slot == after.Slot ? 0 : BriefFields.Slot)
            | (before.Claim == after.Claim ? 0 : BriefFields.Claim)
            | (before.Flavour == after.Flavour ? 0 : BriefFields.Flavour)
            | (before.CostLimit == after.CostLimit ? 0 : BriefFields.CostLimit)
            | (before.Price == after.Price ? 0 : BriefFields.Price)
            | (before.Avoid == after.Avoid ? 0 : BriefFields.Avoid)
            | (before.Equipment == after.Equipment ? 0 : BriefFields.Equipment)
            | (before.Due == after.Due ? 0 : BriefFields.Due);
        if (fields != BriefFields.None)
        {
            yield return new ChangeBrief(fields, after);
        }
    }
}
