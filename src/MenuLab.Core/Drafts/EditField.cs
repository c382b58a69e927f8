namespace MenuLab.Core.Drafts;

/// <summary>One field of a working copy, as merging sees it.</summary>
/// <param name="Line">The line; null for a field of the draft itself.</param>
/// <param name="Name">
/// snake_case: of a line "presence", "position", "text", "ingredient", "amount", "place", "joins", "start", "treatment";
/// of the draft "name", "style", "standing", "start", "build_…", "brief_…".
/// </param>
public readonly record struct EditField(LineId? Line, string Name);

/// <summary>Which fields an action sets, to what, and how it is narrowed to one of them.</summary>
public static class EditFields
{
    private const string Presence = "presence";
    private const string Start = "start";

    /// <summary>The fields that an action sets, with the value of each; values compare by <see cref="object.Equals(object)"/>.</summary>
    public static IEnumerable<(EditField Field, object? Value)> Of(EditAction action)
    {
        switch (action)
        {
            case AddLine add:
                yield return (new EditField(add.Line, Presence), true);
                break;
            case RemoveLine remove:
                yield return (new EditField(remove.Line, Presence), false);
                break;
            case MoveLine move:
                yield return (new EditField(move.Line, "position"), move.After);
                break;
            case ChangeLine change:
                foreach (var field in Flags(change.Fields))
                {
                    yield return (new EditField(change.Line, Snake(field.ToString())), Value(change.Content, field));
                }
                break;
            case ChangeBuild change:
                foreach (var field in Flags(change.Fields))
                {
                    yield return (new EditField(null, "build_" + Snake(field.ToString())), Value(change.Build, field));
                }
                break;
            case ChangeBrief change:
                foreach (var field in Flags(change.Fields))
                {
                    yield return (new EditField(null, "brief_" + Snake(field.ToString())), Value(change.Brief, field));
                }
                break;
            case Rename rename:
                yield return (new EditField(null, "name"), rename.Name);
                break;
            case ChooseStyle style:
                yield return (new EditField(null, "style"), style.Style);
                break;
            case Stand stand:
                yield return (new EditField(null, "standing"), (stand.Standing, stand.Reason));
                break;
            case StartFrom start:
                yield return (new EditField(null, Start), start.Iteration);
                break;
        }
    }

    /// <summary>
    /// The fields in which an edit collides with what others did since the version that its author saw: the last edit of
    /// another page that set the same field to something else. A line that was removed collides with every change of it.
    /// </summary>
    /// <param name="edit">The edit.</param>
    /// <param name="since">Edits applied after the version seen and before this one, in order.</param>
    public static IReadOnlyList<Collision> Collisions(Edit edit, IReadOnlyList<AppliedEdit> since)
    {
        var collisions = new List<Collision>();
        if (edit.Action is StartFrom && since.LastOrDefault(e => e.Edit.Page != edit.Page && Of(e.Edit.Action).Any(f => IsOnTheBench(f.Field))) is { } theirs)
        {
            // It sets every line and the whole build, so whatever another page did there is told.
            return [new Collision(new EditField(null, Start), theirs)];
        }
        foreach (var (field, value) in Of(edit.Action))
        {
            for (var i = since.Count - 1; i >= 0; i--)
            {
                if (since[i].Edit.Page == edit.Page || !Touches(since[i].Edit.Action, field, value, out var differs))
                {
                    continue;
                }
                if (differs)
                {
                    collisions.Add(new Collision(field, since[i]));
                }
                break;
            }
        }
        return collisions;
    }

    /// <summary>The fields that a build says something about; the others are left open.</summary>
    public static BuildFields Said(Build build) =>
        (build.Method is null ? 0 : BuildFields.Method)
        | (build.Seconds is null ? 0 : BuildFields.Seconds)
        | (build.Ice is null ? 0 : BuildFields.Ice)
        | (build.Glass is null ? 0 : BuildFields.Glass)
        | (build.Strain is null ? 0 : BuildFields.Strain)
        | (build.ServedOn is null ? 0 : BuildFields.ServedOn)
        | (build.Steps.Count == 0 ? 0 : BuildFields.Steps);

    /// <summary>The part of an action that sets one field: what "take theirs" applies again.</summary>
    public static EditAction Narrow(EditAction action, EditField field) => action switch
    {
        ChangeLine change => change with { Fields = Flags(change.Fields).First(f => Snake(f.ToString()) == field.Name) },
        ChangeBuild change => change with { Fields = Flags(change.Fields).First(f => "build_" + Snake(f.ToString()) == field.Name) },
        ChangeBrief change => change with { Fields = Flags(change.Fields).First(f => "brief_" + Snake(f.ToString()) == field.Name) },
        _ => action,
    };

    private static bool Touches(EditAction other, EditField field, object? value, out bool differs)
    {
        differs = other is StartFrom && IsOnTheBench(field);
        if (differs)
        {
            return true;
        }
        foreach (var (otherField, otherValue) in Of(other))
        {
            var meets = otherField == field
                || (otherField.Line is not null && otherField.Line == field.Line && (IsRemoval(otherField, otherValue) || IsRemoval(field, value)));
            if (meets)
            {
                differs = otherField != field || !Equals(otherValue, value);
                return true;
            }
        }
        return false;
    }

    private static bool IsOnTheBench(EditField field) => field.Line is not null || field.Name == Start || field.Name.StartsWith("build_", StringComparison.Ordinal);

    private static bool IsRemoval(EditField field, object? value) => field.Name == Presence && value is false;

    internal static IEnumerable<T> Flags<T>(T fields)
        where T : struct, Enum =>
        Enum.GetValues<T>().Where(f => Convert.ToInt32(f, System.Globalization.CultureInfo.InvariantCulture) != 0 && fields.HasFlag(f));

    private static object? Value(LineContent content, LineFields field) => field switch
    {
        LineFields.Text => content.Text,
        LineFields.Ingredient => content.Ingredient,
        LineFields.Amount => content.Amount,
        LineFields.Place => content.Place,
        LineFields.Joins => content.Joins,
        LineFields.Start => content.StartCelsius,
        LineFields.Treatment => content.Treatment,
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Not one field."),
    };

    private static object? Value(Build build, BuildFields field) => field switch
    {
        BuildFields.Method => build.Method,
        BuildFields.Seconds => build.Seconds,
        BuildFields.Ice => build.Ice,
        BuildFields.Glass => build.Glass,
        BuildFields.Strain => build.Strain,
        BuildFields.ServedOn => build.ServedOn,
        BuildFields.Steps => string.Join('\n', build.Steps),
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Not one field."),
    };

    private static object? Value(Brief brief, BriefFields field) => field switch
    {
        BriefFields.Slot => brief.Slot,
        BriefFields.Claim => brief.Claim,
        BriefFields.Flavour => brief.Flavour,
        BriefFields.CostLimit => brief.CostLimit,
        BriefFields.Price => brief.Price,
        BriefFields.Avoid => brief.Avoid,
        BriefFields.Equipment => brief.Equipment,
        BriefFields.Due => brief.Due,
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, "Not one field."),
    };

    private static string Snake(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "_" : "") + char.ToLowerInvariant(c) : c.ToString()));
}
