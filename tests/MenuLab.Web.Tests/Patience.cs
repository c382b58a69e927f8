using System.Runtime.CompilerServices;
using Bunit;

namespace MenuLab.Web.Tests;

internal static class Patience
{
    /// <summary>A machine that is busy with something else must not fail a test; one that waits in vain fails all the same.</summary>
    [ModuleInitializer]
    public static void Wait() => BunitContext.DefaultWaitTimeout = TimeSpan.FromSeconds(30);
}
