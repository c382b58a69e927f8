namespace MenuLab.Core.Exchange;

/// <summary>A drink taken from a file, as text for the reader.</summary>
/// <param name="Name">Its name; empty where the file gives none.</param>
/// <param name="Text">Its lines, build and notes, a line each, without the name.</param>
/// <param name="FirstLine">Line of the file where it begins, from 1.</param>
public sealed record DrinkText(string Name, string Text, int FirstLine);

/// <summary>Where a file cannot be read.</summary>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Message">What is wrong and how to mend it.</param>
public sealed record FileProblem(int Line, int Column, string Message);
