using System.Text.Json.Serialization;
using MenuLab.Core.House;

namespace MenuLab.Core.Drafts;

/// <summary>What an edit does to a working copy.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "does")]
[JsonDerivedType(typeof(AddLine), "add_line")]
[JsonDerivedType(typeof(ChangeLine), "change_line")]
[JsonDerivedType(typeof(MoveLine), "move_line")]
[JsonDerivedType(typeof(RemoveLine), "remove_line")]
[JsonDerivedType(typeof(ChangeBuild), "change_build")]
[JsonDerivedType(typeof(ChangeBrief), "change_brief")]
[JsonDerivedType(typeof(Rename), "rename")]
[JsonDerivedType(typeof(ChooseStyle), "choose_style")]
[JsonDerivedType(typeof(Stand), "stand")]
[JsonDerivedType(typeof(StartFrom), "start_from")]
public abstract record EditAction;

/// <summary>Adds a line.</summary>
/// <param name="Line">Its identity.</param>
/// <param name="Content">Its content.</param>
/// <param name="After">The line it stands below; null for the top. Where that line is gone, it goes to the end.</param>
public sealed record AddLine(LineId Line, LineContent Content, LineId? After) : EditAction;

/// <summary>Changes fields of a line; usually one.</summary>
/// <param name="Line">Which line.</param>
/// <param name="Fields">Which fields.</param>
/// <param name="Content">Their new values; the other fields are those that the author saw and are not applied.</param>
public sealed record ChangeLine(LineId Line, LineFields Fields, LineContent Content) : EditAction;

/// <summary>Moves a line.</summary>
/// <param name="Line">Which line.</param>
/// <param name="After">The line it is to stand below; null for the top. Where that line is gone, it goes to the end.</param>
public sealed record MoveLine(LineId Line, LineId? After) : EditAction;

/// <summary>Removes a line.</summary>
/// <param name="Line">Which line.</param>
public sealed record RemoveLine(LineId Line) : EditAction;

/// <summary>Changes fields of the build; usually one.</summary>
/// <param name="Fields">Which fields.</param>
/// <param name="Build">Their new values; the other fields are not applied.</param>
public sealed record ChangeBuild(BuildFields Fields, Build Build) : EditAction;

/// <summary>Changes fields of the brief; usually one.</summary>
/// <param name="Fields">Which fields.</param>
/// <param name="Brief">Their new values; the other fields are not applied.</param>
public sealed record ChangeBrief(BriefFields Fields, Brief Brief) : EditAction;

/// <summary>Renames the draft.</summary>
/// <param name="Name">The new name.</param>
public sealed record Rename(string Name) : EditAction;

/// <summary>Chooses the style.</summary>
/// <param name="Style">Key of the style; null for none.</param>
public sealed record ChooseStyle(string? Style) : EditAction;

/// <summary>Takes the work up, parks it or drops it.</summary>
/// <param name="Standing">Where it stands from now on.</param>
/// <param name="Reason">Why; needed to drop it.</param>
public sealed record Stand(Standing Standing, string Reason) : EditAction;

/// <summary>A line as a saved iteration, or the working copy before, had it.</summary>
/// <param name="Line">Its identity.</param>
/// <param name="Content">Its content.</param>
public sealed record PlacedLine(LineId Line, LineContent Content);

/// <summary>Puts the lines and the build of a saved iteration on the bench, all at once.</summary>
/// <param name="Iteration">Number of the iteration; null to go on from the last, as it is when this takes a start back.</param>
/// <param name="Lines">The lines, in order.</param>
/// <param name="Build">The build.</param>
/// <param name="AtVersion">The version at which that iteration was put on the bench before, when this takes a later start back; null for now.</param>
public sealed record StartFrom(int? Iteration, IReadOnlyList<PlacedLine> Lines, Build Build, int? AtVersion = null) : EditAction;

/// <summary>A change to a working copy, as it comes from a page (architecture 1.10).</summary>
/// <param name="Id">Made by the page; the same id is never applied twice.</param>
/// <param name="By">Who.</param>
/// <param name="Page">The open page that it comes from.</param>
/// <param name="Seen">Version of the working copy that the author saw.</param>
/// <param name="Action">What it does.</param>
/// <param name="At">When it arrived.</param>
public sealed record Edit(EditId Id, PersonId By, PageId Page, int Seen, EditAction Action, DateTimeOffset At);

/// <summary>An edit that was applied; kept until the draft's next iteration.</summary>
/// <param name="Edit">The edit.</param>
/// <param name="Version">Version of the working copy after it.</param>
/// <param name="Undo">The action that takes it back.</param>
public sealed record AppliedEdit(Edit Edit, int Version, EditAction Undo);

/// <summary>A field that somebody else changed while this author was typing. Both values are kept; the later one stands.</summary>
/// <param name="Field">The field.</param>
/// <param name="Theirs">The other edit, as applied: what it set, what stood before it, and by whom.</param>
public sealed record Collision(EditField Field, AppliedEdit Theirs);

/// <summary>What became of an edit.</summary>
/// <param name="Applied">The edit as applied; when it came a second time, as it was the first time.</param>
/// <param name="Collisions">The fields that collided, to be told to both.</param>
public sealed record EditOutcome(AppliedEdit Applied, IReadOnlyList<Collision> Collisions);
