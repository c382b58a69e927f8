using Microsoft.AspNetCore.Components;

namespace MenuLab.Web.Features.Bench;

/// <summary>A typed line that was handed over with Enter (kept-text.js).</summary>
public sealed class EnteredEventArgs : EventArgs
{
    /// <summary>Made where it was typed.</summary>
    public Guid Id { get; set; }

    /// <summary>The text.</summary>
    public string Text { get; set; } = "";
}

/// <summary>Tells Blazor of the event.</summary>
[EventHandler("onentered", typeof(EnteredEventArgs), enableStopPropagation: true, enablePreventDefault: true)]
public static class EventHandlers;
